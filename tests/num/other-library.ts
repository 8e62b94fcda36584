import highs, { type LegacyHighs } from 'highs';

/** An independent library of linear programmes. Its types describe the form that `require` gives, not ours. */
export const otherLibrary = highs as unknown as () => Promise<LegacyHighs>;
