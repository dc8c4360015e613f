// `npm run schema`: writes the published JSON schemas of the layout and the kit file from the code that reads it.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { root, setUp } from './setUp.mjs';

setUp();
const { kitSchemaText, layoutSchemaText } = await import('../dist/files/index.js');
writeFileSync(join(root, 'schema', 'card.schema.json'), layoutSchemaText());
writeFileSync(join(root, 'schema', 'kit.schema.json'), kitSchemaText());
console.log('Wrote schema/card.schema.json and schema/kit.schema.json.');
