import type { Finding } from '../../document/lay/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';
import { placeText } from './places.ts';

/** Pass-throughs: an open hole with a bare edge is looked at; one of which nothing is stated is a note. */
export function passThrough({ project, run, lay }: CheckContext): Finding[] {
  const use = ruleValue(project, 'pass-through-sealed', run.run.id);
  return run.run.supports
    .filter(({ kind }) => kind === 'pass-through')
    .flatMap(({ id, name = 'The pass-through', seal }) => {
      const at = lay.supports.find((support) => support.id === id)?.at;
      if (at === undefined) return [];
      return judge({
        check: 'passThrough',
        run: run.run.id,
        use,
        sense: 'at-least',
        measured: seal === undefined || seal === 'none' ? 0 : 1,
        unit: 'count',
        severity: seal === 'none' ? 'look' : 'note',
        at,
        message:
          seal === 'none'
            ? `${name}, ${placeText(at)}, is an open hole with its edge on the hose.`
            : `${name}, ${placeText(at)}: it is not stated what seals it.`,
        mend: 'A grommet or a bulkhead fitting; through a firewall one of steel that stands fire, sealed.',
      });
    });
}
