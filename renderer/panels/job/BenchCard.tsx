/** The bench record's place. It says what it waits for until it can keep one. */
export function BenchCard() {
  return (
    <article className="slip card" aria-labelledby="bench-title">
      <h2 id="bench-title">Bench</h2>
      <p className="teach">
        Here the bench will write down what it measured: the cut, the insertion, three crimp diameters, the clock, the
        proof test and the tag. That record is not built yet, so nothing can be entered here. Until then use the boxes
        on the build sheet and keep the paper.
      </p>
    </article>
  );
}
