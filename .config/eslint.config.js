import tseslint from 'typescript-eslint';

// The bench is a plain script over the built program: there are no types to lint it by.
export default tseslint.config(
  { ignores: ['tests/bench/*.mjs'] },
  ...tseslint.configs.strictTypeChecked,
  {
    languageOptions: {
      // The viewer runs in a page and is typed for one.
      parserOptions: {
        project: ['./tsconfig.json', './.config/tsconfig.viewer.json'],
        tsconfigRootDir: process.cwd(),
      },
    },
    rules: {
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      '@typescript-eslint/no-non-null-assertion': 'off',
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/switch-exhaustiveness-check': 'error',
      'no-restricted-imports': [
        'error',
        {
          paths: [
            {
              name: '@jscad/modeling',
              allowImportNames: ['default'],
              message: 'named imports type-check but die in plain node; use the default import',
            },
            {
              name: 'jstat',
              allowImportNames: ['default'],
              message: 'only the default import works in plain node',
            },
          ],
        },
      ],
    },
  },
);
