import { describe, expect, it } from 'vitest';
import { faultReport } from '../../src/cli/fault-report.ts';

const context = { version: '0.1.0', verb: 'predict', node: 'v20.19.0', platform: 'linux x64' };

function fault(message: string, stack: string): Error {
  const error = new TypeError(message);
  error.stack = stack;
  return error;
}

describe('a report of a fault of ours', () => {
  it('tells what broke and where in our own files, and no folder or text of the user', () => {
    const report = faultReport(
      fault(
        'cannot read /home/mary/secret parts/gift.yaml "Clock for Anna" of undefined',
        [
          'TypeError: x',
          '    at poseOf (file:///home/mary/tools/node_modules/flipwright/dist/setup/seat.js:41:13)',
          '    at C:\\Users\\mary\\flipwright\\dist\\stackup\\predict.js:7:2',
          '    at process.processTicksAndRejections (node:internal/process/task_queues:95:5)',
        ].join('\n'),
      ),
      context,
    );
    expect(report).toContain('flipwright 0.1.0, Node v20.19.0, linux x64');
    expect(report).toContain('at: setup/seat.js:41');
    expect(report).toContain('at: stackup/predict.js:7');
    expect(report).toContain('while: predict');
    expect(report).not.toMatch(/mary|home|Users|Anna|secret/);
  });

  it('has the same number for the same fault, another for another', () => {
    const number = (message: string): string =>
      /report (\w{8})/.exec(
        faultReport(fault(message, 'x\n at a (/x/dist/b/c.js:1:1)'), context),
      )![1]!;
    expect(number('a')).toBe(number('a'));
    expect(number('a')).not.toBe(number('b'));
  });

  it('stays short whatever is thrown', () => {
    const long = faultReport(fault('x'.repeat(10_000), ''), context);
    expect(long.length).toBeLessThan(600);
    expect(faultReport('thrown text', context)).toContain('thrown text');
    expect(faultReport(undefined, context)).toContain('undefined');
  });
});
