import { partUses } from '../../../shared/document/drawer/partUses.ts';
import { columnsOf, type PartKind } from '../../../shared/document/parts/columns.ts';
import { rowsOfKind } from '../../../shared/document/parts/partSheet.ts';
import { PART_KIND_WORDS } from '../../../shared/document/wording/partWords.ts';
import {
  draftValues,
  fieldProblems,
  isTouched,
  keyOf,
  type PartDraft,
  readDraft,
} from '../../state/parts/draftPart.ts';
import { draftKey } from '../../state/parts/drawerStore.ts';
import { useBench, useDocument, useDrawer } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { Shape } from '../../widgets/Shape.tsx';
import { CARD_SECTIONS, type CardSection, isAsked } from './cardSections.ts';
import { EmptyKind } from './EmptyKind.tsx';
import { MeasurePage } from './MeasurePage.tsx';
import { PartField } from './PartField.tsx';
import { PublishedNotes } from './PublishedNotes.tsx';

/** The chosen part on its card; typed here, it is kept when it is whole and Keep is pressed. */
export function PartCard() {
  const { onParts } = useBench();
  const open = useDocument((state) => state.open);
  const { kind, chosen, measuring } = useDrawer((state) => state);
  if (open === null) return null;
  const count = rowsOfKind(open.shelf.sheetsOf(open.history.present), kind).length;
  const draft = onParts.card();
  if (draft === null) return <EmptyKind kind={kind} count={count} />;
  // A card of another part is another card: nothing of its fields is carried over.
  const key = draftKey(kind, chosen[kind] ?? null);
  return measuring && kind === 'ends' ? <MeasurePage key={key} draft={draft} /> : <Card key={key} draft={draft} />;
}

function Card({ draft }: { draft: PartDraft }) {
  const open = useDocument((state) => state.open);
  const { kind } = draft;
  const sheets = open?.shelf.sheetsOf(open.history.present) ?? [];
  const { values } = draftValues(draft);
  const read = readDraft(draft, rowsOfKind<PartKind>(sheets, kind));
  const problems = read.ok ? [] : read.problems;
  const shown = (key: string) => fieldProblems(draft, problems, key);
  const wanting = new Set(problems.filter(({ path }) => shown(keyOf(path)).length > 0).map(({ path }) => keyOf(path)));
  const columns = columnsOf(kind);
  const title = draft.id === null ? `New ${PART_KIND_WORDS[kind].one}` : String(values['name'] ?? draft.id);
  return (
    <article className="slip part-card" aria-labelledby="part-title">
      <CardHead draft={draft} title={title} example={values['provenance'] === 'example'} />
      <form
        className="part-sections"
        onSubmit={(event) => {
          event.preventDefault();
        }}
      >
        {CARD_SECTIONS[kind].map((section) => (
          <Section key={section.title} section={section} draft={draft} values={values}>
            {columns
              .filter(({ key }) => section.keys.includes(key) && (isAsked(key, values) || shown(key).length > 0))
              .sort((p, q) => section.keys.indexOf(p.key) - section.keys.indexOf(q.key))
              .map((column) => (
                <PartField key={column.key} draft={draft} column={column} problems={shown(column.key)} />
              ))}
          </Section>
        ))}
      </form>
      <CardFoot draft={draft} wanting={wanting.size} />
    </article>
  );
}

function CardHead({ draft, title, example }: { draft: PartDraft; title: string; example: boolean }) {
  const open = useDocument((state) => state.open);
  const uses =
    open === null || draft.id === null ? [] : partUses(open.shelf.drawerOf(open.history.present), draft.kind, draft.id);
  return (
    <header className="part-head">
      <h2 id="part-title">{title}</h2>
      <p className="service">
        {example && <span className="stamp">Example data</span>}{' '}
        {draft.id !== null && <code className="part-id">{draft.id}</code>}{' '}
        {uses.length > 0 ? `In use by ${uses.join(', ')}` : draft.id !== null && 'Nothing uses it'}
      </p>
    </header>
  );
}

interface SectionProps {
  readonly section: CardSection;
  readonly draft: PartDraft;
  readonly values: Readonly<Record<string, unknown>>;
  readonly children: readonly React.ReactNode[];
}

function Section({ section, draft, values, children }: SectionProps) {
  const { drawer } = useBench();
  if (children.length === 0) return null;
  const lengths = draft.kind === 'ends' && section.title === 'Lengths';
  return (
    <fieldset className="part-section">
      <legend>{section.title}</legend>
      {lengths && (
        <div className="measure-offer">
          <p>
            C and drop, or the two lengths: whichever is there, the other follows. With a caliper and a square they are
            read off the end itself.
          </p>
          <Button onPress={() => drawer.set({ measuring: true })}>Measure it yourself</Button>
        </div>
      )}
      <div className="part-fields">{children}</div>
      {lengths && <PublishedNotes values={values} />}
    </fieldset>
  );
}

function CardFoot({ draft, wanting }: { draft: PartDraft; wanting: number }) {
  const { onParts } = useBench();
  const refused = useDrawer((state) => state.refused);
  const touched = isTouched(draft);
  return (
    <footer className="part-foot">
      <div role="status">
        {refused.length > 0 && (
          <p className="part-refused">
            <Shape kind="octagon" size={18} /> {refused.join('. ')}.
          </p>
        )}
        {refused.length === 0 && wanting > 0 && (
          <p className="part-refused">
            <Shape kind="octagon" size={18} /> {wanting === 1 ? 'One field is' : `${wanting} fields are`} not right yet.
          </p>
        )}
      </div>
      <div className="support-buttons">
        <Button look="main" disabled={!touched} onPress={onParts.keep}>
          Keep
        </Button>
        <Button disabled={!touched} onPress={onParts.drop}>
          {draft.id === null ? 'Throw this card away' : 'Drop the changes'}
        </Button>
        {draft.id !== null && (
          <>
            <Button onPress={onParts.startCopy}>Copy</Button>
            <Button onPress={onParts.remove}>Take out</Button>
          </>
        )}
      </div>
    </footer>
  );
}
