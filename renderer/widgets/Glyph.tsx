const PATHS = {
  undo: 'M9 5 4 10l5 5M4 10h10a6 6 0 0 1 0 12h-3',
  redo: 'm15 5 5 5-5 5M20 10H10a6 6 0 0 0 0 12h3',
  save: 'M12 3v11M7.5 10 12 14.5 16.5 10M4 15v5h16v-5',
  moon: 'M19.5 14.5A8 8 0 0 1 9.5 4.5a8 8 0 1 0 10 10z',
  sun: 'M12 8a4 4 0 1 0 0 8 4 4 0 0 0 0-8zM12 1.5v3M12 19.5v3M1.5 12h3M19.5 12h3M4.6 4.6l2.1 2.1M17.3 17.3l2.1 2.1M19.4 4.6l-2.1 2.1M6.7 17.3l-2.1 2.1',
  whole: 'M4 9V4h5M15 4h5v5M20 15v5h-5M9 20H4v-5',
  eye: 'M2 12s3.6-6.5 10-6.5S22 12 22 12s-3.6 6.5-10 6.5S2 12 2 12zM12 9.2a2.8 2.8 0 1 0 0 5.6 2.8 2.8 0 0 0 0-5.6z',
  drawer: 'M3 5h18v14H3zM3 12h18M10 8.5h4M10 15.5h4',
  caliper: 'M4 4v16M4 8h16M20 4v8M10 8v6',
  cut: 'M4 6h16v12H4zM12 3v18M15 9l2 2M15 14l2 2',
  glove:
    'M7 21v-5L4.5 12.5a1.6 1.6 0 0 1 2.6-1.9L8.5 12V5a1.5 1.5 0 0 1 3 0v5M11.5 4a1.5 1.5 0 0 1 3 0v6M14.5 5.5a1.5 1.5 0 0 1 3 0V16l-1 5z',
  heat: 'M8 21c-3-3 3-5 0-9s3-5 0-9M14 21c-3-3 3-5 0-9s3-5 0-9',
  close: 'M5 5l14 14M19 5 5 19',
} as const;

/** A line sign for a button that has its name in words elsewhere. */
export function Glyph({ kind }: { kind: keyof typeof PATHS }) {
  return (
    <svg className="glyph" width="22" height="22" viewBox="0 0 24 24" aria-hidden="true">
      <path d={PATHS[kind]} />
    </svg>
  );
}
