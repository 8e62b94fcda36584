import { jsonSchemaOf } from './build.ts';
import { JOB } from './schema-job.ts';
import { SHOP } from './schema-shop.ts';

/** JSON Schema (draft 7) of a job file, for editors that complete and check while somebody types. */
export const jobSchema = (): Readonly<Record<string, unknown>> => ({
  ...jsonSchemaOf(JOB),
  title: 'Flipwright job',
});

/** JSON Schema (draft 7) of a shop file. */
export const shopSchema = (): Readonly<Record<string, unknown>> => ({
  ...jsonSchemaOf(SHOP),
  title: 'Flipwright shop',
});

/** The schema files as they are kept beside the examples. */
export const schemaFiles = (): readonly { readonly name: string; readonly text: string }[] => [
  { name: 'job.schema.json', text: fileText(jobSchema()) },
  { name: 'shop.schema.json', text: fileText(shopSchema()) },
];

const fileText = (schema: unknown): string => `${JSON.stringify(schema, null, 2)}\n`;
