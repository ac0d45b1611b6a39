/**
 * The two calls of the CSV library that the program uses. Written by hand because its published types pull in the types
 * of Node, which nothing under `shared/` may see.
 */
declare module 'papaparse' {
  interface ParseError {
    readonly type: string;
    readonly code: string;
    readonly message: string;
    readonly row?: number;
  }
  interface UnparseConfig {
    readonly newline?: string;
    readonly delimiter?: string;
    readonly header?: boolean;
    readonly columns?: string[];
    readonly quotes?: boolean;
    readonly escapeFormulae?: boolean;
  }
  interface Papa {
    parse(text: string, config: { delimiter: string }): { readonly data: string[][]; readonly errors: ParseError[] };
    unparse(table: { fields: string[]; data: readonly unknown[] } | readonly unknown[], config?: UnparseConfig): string;
  }
  const papa: Papa;
  // biome-ignore lint/style/noDefaultExport: the library's own shape
  export default papa;
}
