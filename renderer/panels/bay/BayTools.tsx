import { useStore } from 'zustand';
import { PLAIN_SKIN, type SkinKind } from '../../../shared/document/project/schema.ts';
import { skinOfPart } from '../../../shared/document/project/skinOfPart.ts';
import { useBench, useDocument, useSession } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { Glyph } from '../../widgets/Glyph.tsx';
import { wordsOf } from '../runs/words.ts';
import { HeatLegend } from './HeatLegend.tsx';
import { SectionCard } from './SectionCard.tsx';
import { SkinSwatch } from './SkinSwatch.tsx';

/** On the edge of the bay: how its skins are drawn, and the two ways to look at it anew. */
export function BayTools() {
  const { hand, onMeasure, section, session } = useBench();
  const measuring = useStore(hand, ({ tool }) => tool.kind === 'measure');
  const heat = useSession((state) => state.heat);
  const nextHeat = (): void => session.set({ heat: heat === null ? 'running' : heat === 'running' ? 'soak' : null });
  const cutting = useStore(section, ({ isOpen }) => isOpen);
  const isCut = useStore(section, ({ plane, box }) => plane !== null || box !== null);
  const open = useDocument((state) => state.open);
  const seeThrough = useSession((state) => state.seeThrough);
  if (open?.bay === null || open === null) return null;
  const project = open.history.present;
  const used = new Set(open.bay.parts.map((part) => skinOfPart(project, part.name).id));
  const kinds = [PLAIN_SKIN, ...project.bay.skins].filter((skin) => used.has(skin.id)).map((s) => s.kind);
  return (
    <div className="bay-tools">
      {heat !== null ? (
        <HeatLegend view={heat} known={open.report?.lays.some((lay) => lay.heat !== undefined) === true} />
      ) : (
        <ul className="legend" aria-label="Skins" data-over-bay>
          {[...new Set<SkinKind>(kinds)].map((kind) => (
            <li key={kind}>
              <SkinSwatch kind={kind} /> {wordsOf(kind)}
            </li>
          ))}
        </ul>
      )}
      <div className="bay-buttons" data-over-bay>
        {cutting && <SectionCard bay={open.bay} />}
        <Button look="quiet" hint="Heat: key Shift H" pressed={heat !== null} onPress={() => nextHeat()}>
          <Glyph kind="heat" /> {heat === null ? 'Heat' : heat === 'running' ? 'Heat: running' : 'Heat: just off'}
        </Button>
        <Button
          look="quiet"
          hint="Measure: key Shift M"
          pressed={measuring}
          onPress={() => (measuring ? onMeasure.clear() : onMeasure.begin())}
        >
          <Glyph kind="caliper" /> Measure
        </Button>
        <Button
          look="quiet"
          hint="Cut open: key Shift X"
          pressed={isCut || cutting}
          onPress={cutting ? section.shut : section.open}
        >
          <Glyph kind="cut" /> Cut open
        </Button>
        <Button
          look="quiet"
          hint="See through: key x"
          pressed={seeThrough}
          onPress={() => session.set({ seeThrough: !seeThrough })}
        >
          <Glyph kind="eye" /> See through
        </Button>
        <Button
          look="quiet"
          hint="Whole bay: key f"
          onPress={() => session.set((state) => ({ fitSerial: state.fitSerial + 1 }))}
        >
          <Glyph kind="whole" /> Whole bay
        </Button>
      </div>
    </div>
  );
}
