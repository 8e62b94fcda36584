import { EXIT, Refusal } from './exit.ts';
import { filesOf } from './load.ts';
import { watchFiles } from './watch.ts';

/**
 * Runs a verb once, or, when it is watched, again after each save of its jobs or of a file that they
 * name, until Ctrl-C. A job that has become wrong is told and waited for, as long as it takes.
 * @returns the exit code of the last run.
 */
export async function again(
  jobs: readonly string[],
  isWatched: boolean,
  run: () => number | Promise<number>,
): Promise<number> {
  if (!isWatched) return run();
  const once = async (): Promise<number> => {
    try {
      return await run();
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      process.stderr.write(`${error.message}\n`);
      return error.code;
    }
  };
  let code: number = EXIT.good;
  let isFirst = true;
  const paths = (): readonly string[] => jobs.flatMap(filesOf);
  return new Promise((end, fail) => {
    // Watched from before the first run, so that no save is missed.
    const watching = watchFiles(paths, async () => {
      if (!isFirst) process.stderr.write(`\nsaved at ${new Date().toLocaleTimeString()}\n`);
      isFirst = false;
      try {
        code = await once();
      } catch (error) {
        watching.leave();
        fail(error instanceof Error ? error : new Error(String(error)));
        return;
      }
      process.stderr.write(`\nwatching ${paths().length} files; Ctrl-C ends\n`);
    });
    process.once('SIGINT', () => {
      watching.leave();
      end(code === EXIT.missed ? EXIT.good : code);
    });
    void watching.run();
  });
}
