import { bayAndPorts } from './demo/bayAndPorts.ts';
import { laying } from './demo/laying.ts';
import { looking } from './demo/looking.ts';
import { demoFolder } from './demo/onBench.ts';
import { sharedWindow } from './demo/sharedWindow.ts';

let folder = '';
const bench = sharedWindow(async () => {
  folder = await demoFolder();
  return folder;
});

bayAndPorts(bench, () => folder);
laying(bench);
looking(bench);
