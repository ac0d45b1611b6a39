import type { SkinKind } from '../../../shared/document/project/schema.ts';

const MARKS: Record<SkinKind, string> = {
  plain: '',
  hot: 'M-4 12 12-4M0 24 24 0M12 28 28 12',
  composite: 'M0 24 24 0M-4 12 12-4M12 28 28 12M0 0 24 24M-4 12 12 28M12-4 28 12',
  'sharp-edge': 'M2 18 8 12M11 9l6-6M12 22l5-5M19 15l5-5',
  wiring: 'M0 8h24M0 16h24M6 4v8M18 12v8',
  moving: 'M0 7q6-6 12 0t12 0M0 15q6-6 12 0t12 0M0 23q6-6 12 0t12 0',
};

/** The look of a skin in the bay, as a patch. */
export function SkinSwatch({ kind }: { kind: SkinKind }) {
  return (
    <svg className={`swatch swatch-${kind}`} width="24" height="24" viewBox="0 0 24 24" aria-hidden="true">
      <rect className="swatch-base" width="24" height="24" />
      <path className="swatch-mark" d={MARKS[kind]} />
    </svg>
  );
}
