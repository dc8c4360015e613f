import { readFileSync } from 'node:fs';

const { appArrows, apps, arrows, packages } = JSON.parse(
  readFileSync(new URL('architecture.json', import.meta.url), 'utf8'),
);

const parts = Object.keys(arrows);
/** Tests and their oracles may look anywhere but into apps. */
const notTests = '(\\.test\\.tsx?$|/testing/)';

const rules = [
  {
    name: 'no-cycles',
    from: { path: '^(src|apps)/' },
    to: { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } },
  },
  { name: 'not-resolved', from: { path: '^(src|apps|test|benchmarks)/' }, to: { couldNotResolve: true } },
  {
    name: 'only-through-index',
    from: { path: '^src/([^/]+)/', pathNot: notTests },
    to: { path: '^src/[^/]+/.+', pathNot: ['^src/$1/', '^src/[^/]+/index\\.ts$'] },
  },
  {
    name: 'apps-only-through-index',
    from: { path: '^apps/', pathNot: notTests },
    to: { path: '^src/[^/]+/.+', pathNot: '^src/[^/]+/index\\.ts$' },
  },
  { name: 'unknown-part', from: { path: '^src/([^/]+)/', pathNot: `^src/(${parts.join('|')})/` }, to: {} },
  {
    name: 'testing-only-for-tests',
    from: { path: '^(src|apps)/', pathNot: notTests },
    to: { path: '/testing/' },
  },
  { name: 'library-knows-no-app', from: { path: '^src/' }, to: { path: '^apps/' } },
  {
    name: 'no-node-in-library',
    from: { path: '^src/', pathNot: notTests },
    to: { dependencyTypes: ['core'] },
  },
  ...parts.map((part) => ({
    name: `arrows-of-${part}`,
    comment: `${part} may import ${arrows[part].join(', ') || 'nothing'}`,
    from: { path: `^src/${part}/`, pathNot: notTests },
    to: { path: '^src/', pathNot: `^src/(${[part, ...arrows[part]].join('|')})/` },
  })),
  ...parts.map((part) => ({
    name: `packages-of-${part}`,
    from: { path: `^src/${part}/`, pathNot: notTests },
    to: { path: 'node_modules', pathNot: pathsOf(packages[part]) },
  })),
  ...Object.keys(apps).map((app) => ({
    name: `apps-apart-${app}`,
    from: { path: `^apps/${app}/` },
    to: { path: '^apps/', pathNot: `^apps/(${[app, ...(appArrows[app] ?? [])].join('|')})/` },
  })),
  ...Object.keys(apps).map((app) => ({
    name: `packages-of-app-${app}`,
    from: { path: `^apps/${app}/`, pathNot: notTests },
    to: { path: 'node_modules', pathNot: pathsOf(apps[app]) },
  })),
];

function pathsOf(allowed = {}) {
  const names = Object.keys(allowed).flatMap((name) => [
    `node_modules/${name}/`,
    `node_modules/@types/${name}/`,
  ]);
  return names.length === 0 ? ['^$'] : names;
}

export default {
  forbidden: rules.map((rule) => ({ severity: 'error', ...rule })),
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['node', 'import', 'types', 'default'],
    },
  },
};
