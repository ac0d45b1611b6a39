import fontkit from '@pdf-lib/fontkit';

type FontMaker = typeof fontkit;

/**
 * The font engine as the PDF library can use it. The library calls a subset's `encode` without a stream when it finds
 * one, which this engine's `encode` needs; hiding it makes the library take `encodeStream`, which works.
 */
export const fontKit: FontMaker = {
  ...fontkit,
  create: (...given: Parameters<FontMaker['create']>) => {
    const font = fontkit.create(...given);
    const createSubset = font.createSubset.bind(font);
    font.createSubset = () => {
      const subset = createSubset();
      return {
        includeGlyph: subset.includeGlyph.bind(subset),
        encodeStream: subset.encodeStream.bind(subset),
        ...('cff' in subset ? { cff: subset.cff } : {}),
      } as ReturnType<typeof createSubset>;
    };
    return font;
  },
};
