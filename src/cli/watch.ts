import { watch, type FSWatcher } from 'node:fs';
import { basename, dirname } from 'node:path';

/** How long a file must be left alone before it counts as saved, ms; editors write in several steps. */
const QUIET_MS = 150;

/**
 * Calls `changed` after any of the files was saved, until `leave` is called. The folders are watched, not
 * the files: many editors save by writing another file and renaming it. Files that come and go are
 * waited for. A change that comes while `changed` still runs is not lost: it runs once more.
 */
export function watchFiles(
  paths: () => readonly string[],
  changed: () => Promise<void>,
): { readonly leave: () => void } {
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
    try {
      await changed();
    } finally {
      isRunning = false;
    }
    // A saved job may name other files than before.
    open();
    if (isWaiting) {
      isWaiting = false;
      soon();
    }
  };
  open();
  return {
    leave: () => {
      hasLeft = true;
      if (timer !== null) clearTimeout(timer);
      close();
    },
  };
}
