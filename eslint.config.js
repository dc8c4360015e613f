import reactHooks from 'eslint-plugin-react-hooks';
import tseslint from 'typescript-eslint';

// Only what needs types or our own rules; format and all other rules are Biome's.
export default tseslint.config(
  { ignores: ['dist', 'node_modules', 'out', 'schema'] },
  {
    files: ['src/**/*.ts', 'apps/**/*.{ts,tsx}', 'test/**/*.ts', 'benchmarks/**/*.ts'],
    languageOptions: {
      parser: tseslint.parser,
      parserOptions: {
        project: ['./tsconfig.json', './apps/web/tsconfig.json', './test/app/tsconfig.json'],
        tsconfigRootDir: import.meta.dirname,
      },
    },
    plugins: { '@typescript-eslint': tseslint.plugin },
    rules: {
      '@typescript-eslint/no-floating-promises': 'error',
      '@typescript-eslint/no-misused-promises': 'error',
      '@typescript-eslint/await-thenable': 'error',
      '@typescript-eslint/switch-exhaustiveness-check': [
        'error',
        { considerDefaultExhaustiveForUnions: true },
      ],
      '@typescript-eslint/no-unnecessary-type-assertion': 'error',
      '@typescript-eslint/no-unsafe-assignment': 'error',
      '@typescript-eslint/no-unsafe-return': 'error',
      '@typescript-eslint/no-unsafe-argument': 'error',
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/restrict-plus-operands': 'error',
      '@typescript-eslint/no-base-to-string': 'error',
    },
  },
  { ...reactHooks.configs.flat.recommended, files: ['apps/web/**/*.{ts,tsx}'] },
  {
    // The library is values and functions: time and chance come in as arguments.
    files: ['src/**/*.ts'],
    ignores: ['**/*.test.ts', '**/testing/**'],
    rules: {
      'no-restricted-properties': [
        'error',
        { object: 'Math', property: 'random', message: 'Chance comes in as a seed.' },
        { object: 'Date', property: 'now', message: 'Time comes in as an argument.' },
        { object: 'performance', property: 'now', message: 'Time comes in as an argument.' },
      ],
      'no-restricted-syntax': [
        'error',
        {
          selector: "NewExpression[callee.name='Date'][arguments.length=0]",
          message: 'Time comes in as an argument.',
        },
      ],
    },
  },
);
