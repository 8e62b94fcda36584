import { spawnSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { completionScript, SHELLS, type Verb } from '../../src/cli/completion.ts';

const verbs: readonly Verb[] = [
  {
    name: 'predict',
    about: "how far the back will be off: isn't it good",
    options: [
      { flag: '--seed', about: "which 'luck' to draw" },
      { flag: '--json', about: 'print figures' },
    ],
    words: [],
  },
  { name: 'explain', about: 'what a key means', options: [], words: ['blank.bevel', 'turn'] },
];

/** What bash offers for a half-typed line, asked of bash itself. */
function offered(typed: readonly string[]): readonly string[] {
  const script = [
    completionScript('bash', 'flipwright', verbs),
    `COMP_WORDS=(${typed.map((word) => `'${word}'`).join(' ')})`,
    `COMP_CWORD=${typed.length - 1}`,
    '_flipwright',
    'printf "%s\\n" "${COMPREPLY[@]}"',
  ].join('\n');
  const run = spawnSync('bash', ['-c', script], { encoding: 'utf8' });
  expect(run.stderr).toBe('');
  return run.stdout.split('\n').filter((line) => line !== '');
}

describe('completion', () => {
  it.skipIf(spawnSync('bash', ['--version']).status !== 0)(
    'in bash offers verbs, options and words',
    () => {
      expect(offered(['flipwright', 'pre'])).toEqual(['predict']);
      expect(offered(['flipwright', 'predict', '--s'])).toEqual(['--seed']);
      expect(offered(['flipwright', 'explain', 'bl'])).toContain('blank.bevel');
      expect(offered(['flipwright', 'predict', 'package-l'])).toEqual(['package-lock.json']);
    },
  );

  it('names every verb and option for every shell, with quotes kept from ending a text', () => {
    for (const shell of SHELLS) {
      const script = completionScript(shell, 'flipwright', verbs);
      for (const word of ['predict', 'explain', 'seed', 'json', 'blank.bevel'])
        expect(script, shell).toContain(word);
    }
    expect(completionScript('fish', 'flipwright', verbs)).toContain("isn\\'t it");
    expect(completionScript('zsh', 'flipwright', verbs)).toContain("off\\: isn'\\''t it");
  });
});
