import { statSync, watch, type FSWatcher } from 'node:fs';
import { basename, dirname } from 'node:path';

/** How long a file must be left alone before it counts as saved, ms; editors write in several steps. */
const QUIET_MS = 150;

/**
 * Calls `changed` when told to `run`, and after any of the files was saved, until `leave` is called. The folders are watched, not
 * the files: many editors save by writing another file and renaming it. Files that come and go are
 * waited for. A change that comes while `changed` still runs is not lost: it runs once more.
 */
export function watchFiles(
  paths: () => readonly string[],
  changed: () => Promise<void>,
): { readonly run: () => Promise<void>; readonly leave: () => void } {
  let watchers: FSWatcher[] = [];
  let timer: NodeJS.Timeout | null = null;
  let isRunning = false;
  let isWaiting = false;
  let hasLeft = false;

  const close = (): void => {
    for (const watcher of watchers) watcher.close();
    watchers = [];
  };
  const open = (): void => {
    close();
    if (hasLeft) return;
    const byFolder = new Map<string, Set<string>>();
    for (const path of paths()) {
      const folder = dirname(path);
      const names = byFolder.get(folder) ?? new Set<string>();
      byFolder.set(folder, names.add(basename(path)));
    }
    for (const [folder, names] of byFolder) {
      const watcher = watch(folder, (_event, name) => {
        if (name === null || names.has(name)) soon();
      });
      watcher.on('error', () => undefined);
      watchers.push(watcher);
    }
  };
  const soon = (): void => {
    if (timer !== null) clearTimeout(timer);
    timer = setTimeout(() => void run(), QUIET_MS);
  };
  const run = async (): Promise<void> => {
    if (isRunning) {
      isWaiting = true;
      return;
    }
    isRunning = true;
    const before = stamps(paths());
    try {
      await changed();
    } finally {
      isRunning = false;
    }
    // A saved job may name other files than before. A save while the watchers change over is seen by its stamp.
    open();
    const now = stamps(paths());
    const isMissed = [...before].some(([path, stamp]) => now.has(path) && now.get(path) !== stamp);
    if (isWaiting || isMissed) {
      isWaiting = false;
      soon();
    }
  };
  open();
  return {
    run,
    leave: () => {
      hasLeft = true;
      if (timer !== null) clearTimeout(timer);
      close();
    },
  };
}

/** When each file was last written, and how long it is; a file that is not there has a stamp too. */
const stamps = (paths: readonly string[]): ReadonlyMap<string, string> =>
  new Map(
    paths.map((path) => {
      const stat = statSync(path, { throwIfNoEntry: false });
      return [path, stat === undefined ? 'none' : `${stat.mtimeMs} ${stat.size}`];
    }),
  );
