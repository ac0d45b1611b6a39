import { useEffect, useRef, useState } from 'react';
import { useStore } from 'zustand';
import { useBench, useDocument } from '../../state/useBench.ts';
import { useWidth } from '../../widgets/useWidth.ts';
import { openPaper, type PaperPages } from './openPaper.ts';

/** px. Pages are never drawn wider on the screen. */
const MOST_WIDE_PX = 860;
const MARGIN_PX = 36;

/** The paper that is looked at as it would be printed now, page under page. */
export function PaperPreview() {
  const { onPreview } = useBench();
  const { paper, drawing, trouble } = useStore(onPreview);
  const runName = useDocument(({ open }) => open?.history.present.runs.find(({ id }) => id === paper?.run)?.name);
  const name = paper?.name === 'tags.pdf' ? 'Tags' : (runName ?? 'Paper');
  const [pages, setPages] = useState<PaperPages | null>(null);
  const [place, setPlace] = useState<HTMLElement | null>(null);
  const width = useWidth(place);
  useEffect(() => {
    if (paper === null) return setPages(null);
    let isNewest = true;
    let opened: PaperPages | null = null;
    void openPaper(paper.pdf).then((made) => {
      opened = made;
      if (isNewest) setPages(made);
      else made.close();
    });
    return () => {
      isNewest = false;
      opened?.close();
    };
  }, [paper]);
  const wide = Math.min(MOST_WIDE_PX, Math.max(200, width - 2 * MARGIN_PX));
  return (
    <section
      ref={setPlace}
      className="paper-preview"
      aria-label="The paper as it would be printed"
      aria-busy={drawing}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: pages longer than the window are scrolled by the keys as well
      tabIndex={0}
    >
      {trouble !== null && <p className="reason">{trouble}</p>}
      {paper === null && trouble === null && (
        <p className="teach">{drawing ? 'Drawing the paper.' : 'Choose a run that is laid to see its paper here.'}</p>
      )}
      {pages !== null &&
        numbersTo(pages.count).map((number) => (
          <Page
            key={number}
            pages={pages}
            number={number}
            widthPx={wide}
            name={`${name}, page ${number} of ${pages.count}`}
          />
        ))}
    </section>
  );
}

function numbersTo(count: number): number[] {
  return Array.from({ length: count }, (_, i) => i + 1);
}

interface PageProps {
  readonly pages: PaperPages;
  readonly number: number;
  readonly widthPx: number;
  readonly name: string;
}

function Page({ pages, number, widthPx, name }: PageProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const place = canvas.current;
    return place === null ? undefined : pages.draw(number, place, widthPx);
  }, [pages, number, widthPx]);
  return <canvas ref={canvas} className="paper-page" role="img" aria-label={name} />;
}
