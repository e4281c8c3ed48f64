import { Command } from 'commander';
import { jsonSchema, jsonSchemaNames } from '../../schema/json-schema.ts';
import { describeFound, InputError } from '../../schema/problem.ts';
import type { Screen } from './screen.ts';

const HELP = `
Examples:
    $ toehold schema recording > recording.schema.json
    $ toehold schema result

Lengths, times and the like have their unit at the end of the field's name: mm, s, V, mpmin (m/min), mmps (mm/s), deg, C (°C).`;

export function schemaCommand(screen: Screen): Command {
  return new Command('schema')
    .description('print the JSON Schema of a file format')
    .argument('<format>', jsonSchemaNames.join(', '))
    .addHelpText('after', HELP)
    .action((format: string) => {
      const name = jsonSchemaNames.find((n) => n === format);
      if (name === undefined) {
        throw new InputError('schema', [
          { path: 'format', found: describeFound(format), allowed: jsonSchemaNames.join(', ') },
        ]);
      }
      screen.json(jsonSchema(name));
    });
}
