/** The papers of a whole project, each by the file it becomes. */
export const PAPERS = ['cut-list.csv', 'build-sheets.pdf', 'tags.pdf', 'stock-cuts.csv'] as const;
export type PaperName = (typeof PAPERS)[number];
