import * as z from 'zod/mini';
import { layoutShape } from './layoutShape.ts';

/**
 * The text of the published JSON Schema (draft 2020-12) of the layout file.
 *
 * It says what can be said of each field by itself. Whether a text is a length, what ids name and what must go
 * together, `readLayoutFile` alone says.
 */
export function layoutSchemaText(): string {
  const schema = z.toJSONSchema(layoutShape('in'), { io: 'input', override: completed });
  return `${JSON.stringify({ ...schema, title: 'A layout of a set of handmade cards' }, null, 2)}\n`;
}

/** What zod does not write of itself. */
function completed({ jsonSchema }: { jsonSchema: z.core.JSONSchema.BaseSchema }): void {
  const { properties, propertyNames, additionalProperties, prefixItems } = jsonSchema;
  // Fields of other tools are let in wherever our own are listed.
  if (properties !== undefined) jsonSchema.patternProperties = { '^x-': true };
  // Among the papers, what begins with x- is a paper only when it has sheets.
  if (typeof propertyNames === 'object' && typeof additionalProperties === 'object') {
    jsonSchema.propertyNames = { anyOf: [propertyNames, { pattern: '^x-' }] };
    jsonSchema.patternProperties = {
      '^x-': { anyOf: [{ not: { type: 'object', required: ['sheets'] } }, additionalProperties] },
    };
  }
  // The length of a tuple is left open by `prefixItems`.
  if (prefixItems !== undefined) {
    jsonSchema.minItems = prefixItems.length;
    jsonSchema.maxItems = prefixItems.length;
  }
  // The room of a part names an inset, too.
  if (properties?.inset !== undefined && properties.size !== undefined)
    jsonSchema.oneOf = ['size', 'inset', 'diameter'].map((field) => ({ required: [field] }));
}
