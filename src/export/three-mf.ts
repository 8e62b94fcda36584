import { invariant } from '../num/invariant.ts';
import { checkMesh, type Corner3, type Facet } from '../jig/mesh.ts';
import { plainWords } from './plain-words.ts';
import { zipOf } from './zip.ts';

/** One part of a 3MF file. */
export interface MeshPart {
  readonly name: string;
  /** Closed and rightly wound; convex facets. */
  readonly facets: readonly Facet[];
}

/**
 * The parts as one 3MF file, in millimetres, each an object of its own with its name, where it stands;
 * vertices are shared. The same bytes for the same parts.
 * Source: 3MF Core Specification 1.x, sections 2 and 4 (package, units, mesh).
 */
export function threeMfOf(title: string, parts: readonly MeshPart[]): Uint8Array {
  invariant(parts.length > 0, 'a 3MF file without a part');
  const objects = parts.map(({ name, facets }, i) => {
    const { openEdgeCount, signedVolumeMm3 } = checkMesh(facets);
    invariant(openEdgeCount === 0, `${name}: ${openEdgeCount} open edges must not be written`);
    invariant(
      signedVolumeMm3 > 0,
      `${name}: a solid of ${signedVolumeMm3} mm3 must not be written`,
    );
    return `<object id="${i + 1}" type="model" name="${nameOf(name)}">${meshOf(facets)}</object>`;
  });
  const items = parts.map((_, i) => `<item objectid="${i + 1}"/>`);
  const model = [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<model unit="millimeter" xml:lang="en-US" xmlns="${CORE}">`,
    `<metadata name="Title">${nameOf(title)}</metadata>`,
    `<resources>${objects.join('\n')}</resources>`,
    `<build>${items.join('')}</build>`,
    '</model>',
    '',
  ].join('\n');
  const utf8 = new TextEncoder();
  return zipOf([
    { path: '[Content_Types].xml', bytes: utf8.encode(CONTENT_TYPES) },
    { path: '_rels/.rels', bytes: utf8.encode(RELATIONS) },
    { path: '3D/3dmodel.model', bytes: utf8.encode(model) },
  ]);
}

const CORE = 'http://schemas.microsoft.com/3dmanufacturing/core/2015/02';
const CONTENT_TYPES = `<?xml version="1.0" encoding="UTF-8"?>
<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/></Types>
`;
const RELATIONS = `<?xml version="1.0" encoding="UTF-8"?>
<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Target="/3D/3dmodel.model" Id="rel0" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/></Relationships>
`;

const nameOf = (text: string): string => plainWords(text).slice(0, 100) || 'part';

function meshOf(facets: readonly Facet[]): string {
  const index = new Map<string, number>();
  const vertices: string[] = [];
  const at = (p: Corner3): number => {
    const words = `x="${decimal(p.x)}" y="${decimal(p.y)}" z="${decimal(p.z)}"`;
    const known = index.get(words);
    if (known !== undefined) return known;
    index.set(words, vertices.length);
    vertices.push(`<vertex ${words}/>`);
    return vertices.length - 1;
  };
  const triangles: string[] = [];
  for (const facet of facets) {
    const corners = facet.map(at);
    for (let i = 1; i + 1 < corners.length; i++) {
      const [a, b, c] = [corners[0]!, corners[i]!, corners[i + 1]!];
      // Two corners within a millionth of a millimetre have become one.
      if (a === b || b === c || a === c) continue;
      triangles.push(`<triangle v1="${a}" v2="${b}" v3="${c}"/>`);
    }
  }
  return `<mesh><vertices>${vertices.join('')}</vertices><triangles>${triangles.join('')}</triangles></mesh>`;
}

/** Finer than any grid of a slicer, and short; no exponent. */
const decimal = (mm: number): string => {
  const text = mm.toFixed(6).replace(/\.?0+$/, '');
  return text === '-0' ? '0' : text;
};
