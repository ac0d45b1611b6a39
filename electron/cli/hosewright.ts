#!/usr/bin/env node
import { programFolders } from '../node/programFolders.ts';
import { EXIT } from './exitCodes.ts';
import { runCommand } from './runCommand.ts';

// A reader that stops early, such as `head`, closes our output: that is no fault of ours.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
});

try {
  process.exitCode = await runCommand(process.argv.slice(2), {
    folders: programFolders(import.meta.dirname),
    out: (text) => process.stdout.write(text),
    err: (text) => process.stderr.write(text),
    progressLine: process.stderr.isTTY === true,
    onInterrupt: (stop) => {
      process.on('SIGINT', stop);
      return () => process.off('SIGINT', stop);
    },
    today: () => new Date(),
  });
} catch (error) {
  process.stderr.write(`hosewright: a fault of the program itself: ${error instanceof Error ? error.stack : error}\n`);
  process.exitCode = EXIT.ownFault;
}
