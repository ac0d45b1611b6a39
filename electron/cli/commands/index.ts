import type { Command } from '../command.ts';
import { builtCommand } from './built.ts';
import { checkCommand } from './check.ts';
import { clockCommand } from './clock.ts';
import { layCommand } from './lay.ts';
import { lengthCommand } from './length.ts';
import { measureCommand } from './measure.ts';
import { mendCommand } from './mend.ts';
import { partsCommand } from './parts.ts';
import { relayCommand } from './relay.ts';
import { schemaCommand } from './schema.ts';
import { serveCommand } from './serve.ts';
import { sheetsCommand } from './sheets.ts';
import { stockCommand } from './stock.ts';
import { straightenCommand } from './straighten.ts';
import { tagsCommand } from './tags.ts';
import { torqueCommand } from './torque.ts';
import { trialCommand } from './trial.ts';
import { waysCommand } from './ways.ts';

/** Every command, in the order of the help. A new one is a file beside these and a line here. */
export const COMMANDS: readonly Command[] = [
  layCommand,
  trialCommand,
  waysCommand,
  mendCommand,
  relayCommand,
  builtCommand,
  checkCommand,
  sheetsCommand,
  stockCommand,
  tagsCommand,
  straightenCommand,
  clockCommand,
  lengthCommand,
  torqueCommand,
  partsCommand,
  measureCommand,
  schemaCommand,
  serveCommand,
];
