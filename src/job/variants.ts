import type { Result } from '../num/result.ts';
import { invariant } from '../num/invariant.ts';
import type { Fault } from './fault.ts';
import { applyEdits, editsText, type Edit } from './edit.ts';
import { textOf, type NamedBytes } from './file/bytes.ts';
import { copyWithPlaces } from './file/places.ts';
import { checkedJob, readJobFile, readShopFile } from './file/read-file.ts';
import { editedYaml } from './file/yaml.ts';
import { besideJob, readParsed, type ReadJob } from './read.ts';
import type { RawJob } from './schema/raw-job.ts';

/** A job file as it is written, with the files it names, to be read again with changes. */
export interface Variants {
  readonly jobFile: NamedBytes;
  readonly files: ReadonlyMap<string, Uint8Array>;
  /** The job with these changes, or why it cannot be; the same job that reading `text` gives. */
  readonly read: (edits: readonly Edit[]) => Result<ReadJob, Fault>;
  /** The file with these changes, its other remarks kept, and a remark on top that says what was changed (`told`; left out, all of it). */
  readonly text: (edits: readonly Edit[], told?: readonly Edit[]) => string;
  /** The job without changes. */
  readonly whole: ReadJob;
  /** Gauges of the shop, by name, as they are written. */
  readonly gauges: Readonly<Record<string, unknown>>;
  /** What the file says there; undefined where it says nothing. */
  readonly written: (path: Edit['path']) => unknown;
}

/**
 * Changes are put into the values that were read, not into the text, and the shop file is read once: some
 * milliseconds a variant instead of some tens. What only the drawing decides (features, needs, repeat) is
 * checked again only when an edit touches it.
 *
 * @param files as for `readJob`, which must have read this file without a fault.
 */
export function variantsOf(jobFile: NamedBytes, files: ReadonlyMap<string, Uint8Array>): Variants {
  const parsed = readJobFile(jobFile);
  const { sound } = parsed;
  invariant(sound !== null && parsed.faults.length === 0, 'variants of a file with faults');
  const whole = readParsed(parsed, jobFile.name, files, 'check');
  invariant(whole.ok, 'variants of a job with faults');
  const checkedIn = whole.value.job.blank;
  return {
    jobFile,
    files,
    whole: whole.value,
    gauges: gaugesOf(sound, jobFile.name, files),
    read: (edits) => {
      if (edits.length === 0) return whole;
      const { root, places } = copyWithPlaces(sound, parsed.places);
      applyEdits(root, places, edits);
      const touchesDrawing = edits.some(({ path: [key] }) => DRAWING.includes(String(key)));
      return readParsed(
        checkedJob(root, places),
        jobFile.name,
        files,
        touchesDrawing ? 'check' : { checkedIn },
      );
    },
    text: (edits, told = edits) => {
      const text = textOf(jobFile);
      invariant(text.ok, 'the file was read before');
      return editedYaml(
        text.value,
        edits,
        `${jobFile.name.replace(/^.*[/\\]/, '')} with ${editsText(told)}`,
      );
    },
    written: (path) =>
      path.reduce<unknown>(
        (at, key) =>
          typeof at === 'object' && at !== null ? (at as Record<string, unknown>)[key] : undefined,
        sound,
      ),
  };
}

/** Keys on which the checks of features and needs hang, beside the size of the blank. */
const DRAWING: readonly string[] = ['front', 'back', 'needs', 'repeat', 'cutters', 'first', 'shop'];

function gaugesOf(
  sound: Partial<RawJob>,
  jobName: string,
  files: ReadonlyMap<string, Uint8Array>,
): Readonly<Record<string, unknown>> {
  const bytes = sound.shop === undefined ? undefined : files.get(sound.shop);
  const shop =
    bytes === undefined || sound.shop === undefined
      ? null
      : readShopFile({ name: besideJob(jobName, sound.shop), bytes }).sound;
  return { ...shop?.gauges, ...sound.gauges };
}
