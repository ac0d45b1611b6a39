import { oneRunCommand } from '../oneRunCommand.ts';
import { trialTable } from '../trialTable.ts';

/** `hosewright trial`: one run with every pair of ends. */
export const trialCommand = oneRunCommand({
  name: 'trial',
  does: 'lay one run with every pair of ends that fits, best first',
  askedTo: 'try ends on',
  job: 'endTrial',
  file: 'end-trial.json',
  table: trialTable,
  choices: ({ entries }) => entries,
});
