import type { Part } from '../../../shapes/part.ts';
import { coolerParts } from './coolers.ts';
import { driveParts, gearboxParts } from './drives.ts';
import { engineParts } from './engine.ts';
import { exhaustParts } from './exhaust.ts';
import { frameParts } from './frame.ts';
import { intakeParts } from './intake.ts';
import { oilPump } from './oilPump.ts';
import { panelParts } from './panels.ts';
import { serviceParts } from './services.ts';
import { tankParts } from './tanks.ts';
import { turboParts } from './turbo.ts';
import { unions } from './unions.ts';

/** Parts that rock with the engine; everything else stands on the chassis. Unions follow their port. */
export function engineBodyParts(): Part[] {
  return [
    ...engineParts(),
    ...oilPump(),
    ...exhaustParts(),
    ...turboParts(),
    ...intakeParts(),
    ...driveParts(),
    ...gearboxParts(),
  ];
}

export function chassisParts(): Part[] {
  return [...tankParts(), ...coolerParts(), ...frameParts(), ...panelParts(), ...serviceParts()];
}

/** The whole example bay, mm, bay frame: X rearward from the firewall, Y to the car's right, Z up. */
export function hillclimbBay(): Part[] {
  return [...engineBodyParts(), ...chassisParts(), ...unions()];
}
