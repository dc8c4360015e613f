// `npm run schema`: writes the published JSON schema of the layout file from the code that reads it.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { root, setUp } from './setUp.mjs';

setUp();
const { layoutSchemaText } = await import('../dist/files/index.js');
writeFileSync(join(root, 'schema', 'card.schema.json'), layoutSchemaText());
console.log('Wrote schema/card.schema.json.');
