import { scale, add as sum, UP, type Vec3 } from '../../shared/base/vec3.ts';
import { CHASSIS_BODY, type Project } from '../../shared/document/project/schema.ts';
import { bodyOfPart, skinOfPart } from '../../shared/document/project/skinOfPart.ts';
import { bayBounds } from './bayBounds.ts';
import type { DocumentStore, OpenDocument } from './documentStore.ts';
import { addBody, setPartBody } from './edits/bodyEdits.ts';
import { addPort, newPort, removePort, runsAt, type Seat, seatPort } from './edits/portEdits.ts';
import { addSkin, type NewSkin, setPartSkin } from './edits/skinEdits.ts';
import { type Aim, type HandStore, NO_TOOL } from './handStore.ts';
import type { JobsStore } from './jobsStore.ts';
import { rounded } from './supportPlaces.ts';

interface BayNeeds {
  readonly document: DocumentStore;
  readonly jobs: JobsStore;
  readonly hand: HandStore;
}

/** What the hand does on the bay: put a port on it, and say which skin a part has. Each is one step back. */
export function createOnBay({ document, jobs, hand }: BayNeeds) {
  const present = (): Project | null => document.getState().open?.history.present ?? null;

  const add = (aim: Aim): void => {
    const { open } = document.getState();
    if (open === null) return;
    const project = open.history.present;
    const body = bodyOfPart(project, aim.part).id;
    const port = newPort(project, seatOf(aim), open.tables.ends, body === CHASSIS_BODY.id ? undefined : body);
    document.edit('new port', (now) => addPort(now, port));
    hand.set({ port: port.id });
  };

  const seat = (portId: string, aim: Aim): void =>
    document.edit('move port', (project) => seatPort(project, portId, seatOf(aim)));

  const skin = (part: string, skinId: string | null): void => {
    const parts = document.getState().open?.bay?.parts.map(({ name }) => name) ?? [];
    document.edit('skin of a part', (project) => setPartSkin(project, part, skinId, parts));
  };

  const body = (part: string, bodyId: string | null): void => {
    const parts = document.getState().open?.bay?.parts.map(({ name }) => name) ?? [];
    document.edit('body of a part', (project) => setPartBody(project, part, bodyId, parts));
  };

  return {
    seat,
    skin,
    body,
    /** A port in the middle of the bay, looking up, for those who type its place. */
    addByNumbers: (): void => {
      const bay = document.getState().open?.bay;
      if (bay !== null && bay !== undefined) add({ point: middleOf(bay), normal: UP, part: '' });
    },
    /** Does with a place of the bay what the tool in the hand is for. A port is put once, skins part after part. */
    take: (aim: Aim): void => {
      const { tool } = hand.getState();
      if (tool.kind === 'skin') skin(aim.part, tool.skin);
      if (tool.kind === 'body') body(aim.part, tool.body);
      if (tool.kind !== 'seat') return;
      if (tool.port === null) add(aim);
      else seat(tool.port, aim);
      hand.take(NO_TOOL);
    },
    remove: (portId: string): void => {
      const project = present();
      const runs = project === null ? [] : runsAt(project, portId);
      if (runs.length > 0) {
        jobs.tell('This port stays', [`${runs.join(', ')} joins it. Take that run away first, or join it elsewhere.`]);
        return;
      }
      document.edit('remove port', (now) => removePort(now, portId));
      hand.set({ port: null });
    },
    /** Adds a skin and takes it in the hand, so that the next clicks put parts into it. */
    newSkin: (skinToAdd: NewSkin): void => {
      const project = present();
      if (project === null) return;
      const added = addSkin(project, skinToAdd);
      document.edit('new skin', () => added.project);
      hand.take({ kind: 'skin', skin: added.id });
    },
    /** Adds a body and takes it in the hand, so that the next clicks put parts on it. */
    newBody: (name: string): void => {
      const project = present();
      if (project === null) return;
      const added = addBody(project, name);
      document.edit('new body', () => added.project);
      hand.take({ kind: 'body', body: added.id });
    },
    /** The body that a part is on now. */
    bodyOf: (part: string): string => {
      const project = present();
      return project === null ? '' : bodyOfPart(project, part).name;
    },
    /** The skin that a part has now. */
    skinOf: (part: string): string => {
      const project = present();
      return project === null ? '' : skinOfPart(project, part).name;
    },
  };
}

/** The seat at a place of the bay: the middle of the round rim where there is one, else the place itself. */
function seatOf({ point, normal, rim }: Aim): Seat {
  return rim
    ? { seatPoint: rounded(rim.centre, 100), axis: rounded(rim.axis, 1e6) }
    : { seatPoint: rounded(point, 100), axis: rounded(normal, 1e6) };
}

/** Middle of the box round everything that is drawn. */
function middleOf(bay: NonNullable<OpenDocument['bay']>): Vec3 {
  const { low, high } = bayBounds(bay);
  return scale(sum(low, high), 0.5);
}
