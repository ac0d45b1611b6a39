import { oneRunCommand } from '../oneRunCommand.ts';
import { waysTable } from '../waysTable.ts';

/** `hosewright ways`: one run on different sides of things. */
export const waysCommand = oneRunCommand({
  name: 'ways',
  does: 'lay one run on different sides of things, best first',
  askedTo: 'lead round other things',
  job: 'waysRound',
  file: 'ways-round.json',
  table: waysTable,
  choices: ({ ways }) => ways,
});
