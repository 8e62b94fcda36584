declare module '@jscad/stl-serializer' {
  /** The parts of one file, in order. Only solids are taken; they are always rounded to a grid. */
  export function serialize(
    options: { readonly binary: true },
    ...solids: readonly object[]
  ): ArrayBuffer[];
  const serializer: { readonly serialize: typeof serialize };
  export default serializer;
}
