/** A length for a message: at most a micrometre, without noughts behind. */
export const said = (valueMm: number): string => {
  const rounded = Math.round(valueMm * 1000) / 1000;
  return String(rounded === 0 ? 0 : rounded);
};
