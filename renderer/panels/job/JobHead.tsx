import { useStore } from 'zustand';
import { hasUnsavedEdits } from '../../state/documentStore.ts';
import { redoName, undoName } from '../../state/history.ts';
import { useBench, useDocument, useSession } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { Glyph } from '../../widgets/Glyph.tsx';
import { StepStrip } from './StepStrip.tsx';

/** Over the bench: what lies on it, the steps of the job, and what is done to the whole. */
export function JobHead() {
  return (
    <header className="head">
      <JobName />
      <StepStrip />
      <HeadTools />
    </header>
  );
}

function JobName() {
  const bench = useBench();
  const open = useDocument((state) => state.open);
  const lately = useStore(bench.onRecent, ({ isOpen }) => isOpen);
  if (open === null) return <h1 className="job-name">Hosewright</h1>;
  const project = open.history.present;
  return (
    <div className="job">
      <h1 className="job-name" title={project.note ?? project.name}>
        {project.name}
      </h1>
      <p className="job-line">
        {project.exampleData && <span className="stamp">Example data</span>}
        <span className="job-links">
          <button type="button" className="text-button" onClick={() => void bench.openChosen()}>
            Open another
          </button>
          <button
            type="button"
            className="text-button"
            aria-expanded={lately}
            title="Projects opened lately: key Shift O"
            onClick={() => (lately ? bench.onRecent.shut() : void bench.onRecent.show())}
          >
            Lately
          </button>
        </span>
      </p>
    </div>
  );
}

function HeadTools() {
  const { document, session, save } = useBench();
  const open = useDocument((state) => state.open);
  const units = useSession((state) => state.units);
  const theme = useSession((state) => state.theme);
  const gloves = useSession((state) => state.gloves);
  const back = open === null ? undefined : undoName(open.history);
  const again = open === null ? undefined : redoName(open.history);
  const unsaved = open !== null && hasUnsavedEdits(open);
  return (
    <div className="head-tools" role="toolbar" aria-label="Project and window">
      <Button look="quiet" name="Undo" hint={hint('Undo', back)} disabled={back === undefined} onPress={document.undo}>
        <Glyph kind="undo" />
      </Button>
      <Button
        look="quiet"
        name="Redo"
        hint={hint('Redo', again)}
        disabled={again === undefined}
        onPress={document.redo}
      >
        <Glyph kind="redo" />
      </Button>
      <Button look="quiet" name="Save project" disabled={open === null} onPress={() => void save()}>
        <Glyph kind="save" />
        {unsaved && <span className="unsaved" title="Not saved yet" />}
      </Button>
      <Button
        look="quiet"
        name={units === 'mm' ? 'Lengths in mm; change to inches first' : 'Lengths in inches; change to mm first'}
        onPress={() => session.set({ units: units === 'mm' ? 'inch' : 'mm' })}
      >
        <span className="unit-word">{units === 'mm' ? 'mm' : 'in'}</span>
      </Button>
      <Button
        look="quiet"
        name={theme === 'light' ? 'Dark theme' : 'Light theme'}
        onPress={() => session.set({ theme: theme === 'light' ? 'dark' : 'light' })}
      >
        <Glyph kind={theme === 'light' ? 'moon' : 'sun'} />
      </Button>
      <Button
        look="quiet"
        name="Large targets, for gloves"
        pressed={gloves}
        onPress={() => session.set({ gloves: !gloves })}
      >
        <Glyph kind="glove" />
      </Button>
      <Button look="quiet" name="Keys and about" onPress={() => session.set({ keysShown: true })}>
        <span className="unit-word">?</span>
      </Button>
    </div>
  );
}

function hint(word: string, edit: string | undefined): string {
  return edit === undefined ? `${word}: nothing` : `${word}: ${edit}`;
}
