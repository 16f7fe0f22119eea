import type { Command } from 'commander';
import type { Outside } from '../../desk/outside.ts';
import { type Done, wholeNumber, withProject } from './options.ts';

/** Adds the commands about the logging schema. */
export function addSchemaCommands(program: Command, outside: Outside, done: Done): void {
  const schema = program
    .command('schema')
    .description('the logging schema: check it, print its keys, export it');
  schema
    .command('check')
    .description('check a logging schema')
    .argument('[file]', 'a logging.json, or the name of a style', 'logging.json')
    .option('--json', 'as data')
    .action(async (file, options) => {
      const { checkSchemaFile } = await import('../schema.ts');
      done(await checkSchemaFile(outside, { file, json: options.json === true }));
    });
  withProject(schema.command('keys'))
    .description('print everything that can be typed')
    .option('--width <columns>', 'columns of the page', wholeNumber, 100)
    .action(async (options) => {
      const { schemaKeys } = await import('../schema.ts');
      done(await schemaKeys(outside, { folder: options.project, width: options.width }));
    });
  withProject(schema.command('export'))
    .description('print the JSON Schema of the rows that are logged')
    .action(async (options) => {
      const { exportSchema } = await import('../schema.ts');
      done(await exportSchema(outside, { folder: options.project }));
    });
}
