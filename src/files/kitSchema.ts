import * as z from 'zod/mini';
import { kitShape } from './kitShape.ts';

/**
 * The text of the published JSON Schema (draft 2020-12) of the kit file; its papers and layouts are those of the schema
 * of the layout file, `card.schema.json`, beside it.
 */
export function kitSchemaText(): string {
  const schema = z.toJSONSchema(kitShape('in'), { io: 'input', override: completed });
  return `${JSON.stringify({ ...schema, title: 'A kit: layouts, seats and shared papers' }, null, 2)}\n`;
}

/** Fields of other tools are let in, and what layout files have is looked up in their schema. */
function completed({ jsonSchema }: { jsonSchema: z.core.JSONSchema.BaseSchema }): void {
  const { properties } = jsonSchema;
  if (properties === undefined) return;
  jsonSchema.patternProperties = { '^x-': true };
  if (properties.seats !== undefined) refer(properties, 'papers', 'card.schema.json#/properties/papers');
  // A layout of a kit need not have the papers that the kit has, nor their ids: it is described, not held to.
  if (properties.each !== undefined && properties.layout !== undefined)
    properties.layout = {
      ...described(properties.layout),
      type: 'object',
      required: ['cardwright', 'units', 'base', 'parts'],
    };
}

function refer(
  properties: NonNullable<z.core.JSONSchema.BaseSchema['properties']>,
  field: string,
  to: string,
): void {
  properties[field] = { ...described(properties[field]), $ref: to };
}

function described(schema: z.core.JSONSchema._JSONSchema | undefined): { description?: string } {
  return typeof schema === 'object' && schema.description !== undefined
    ? { description: schema.description }
    : {};
}
