import type { Command } from 'commander';
import type { Outside } from '../../desk/outside.ts';
import { type Done, wholeNumber, withProject, withWho } from './options.ts';

/** Adds the commands about the logging schema. */
export function addSchemaCommands(program: Command, outside: Outside, done: Done): void {
  const schema = program
    .command('schema')
    .description('the logging schema: check it, print its keys, take a code library in, export it');
  addCheck(schema, outside, done);
  addKeys(schema, outside, done);
  addImport(schema, outside, done);
  withProject(schema.command('export'))
    .description('print the JSON Schema of the rows that are logged')
    .action(async (options) => {
      const { exportSchema } = await import('../schema-print.ts');
      done(await exportSchema(outside, { folder: options.project }));
    });
}

function addCheck(schema: Command, outside: Outside, done: Done): void {
  schema
    .command('check')
    .description('check a logging schema, and what it changes for the holes beside it')
    .argument('[file]', 'a logging.json, or the name of a style', 'logging.json')
    .option('--against <file>', 'say what it changes of another logging.json or style')
    .option('--json', 'as data')
    .action(async (file, options) => {
      const { checkSchemaFile } = await import('../schema.ts');
      const { against, json } = options;
      done(await checkSchemaFile(outside, { file, against, json: json === true }));
    });
}

function addKeys(schema: Command, outside: Outside, done: Done): void {
  withProject(schema.command('keys'))
    .description(
      'print everything that can be typed on one page; or a blank sheet for the day the laptop dies',
    )
    .option('--width <columns>', 'columns of the page', wholeNumber, 100)
    .option('--html', 'a page to print, for the sun visor')
    .option('--log-sheet <hole>', 'a blank log sheet of a hole to print, from the logged metre down')
    .option('--bag-sheet <hole>', 'a sheet of its numbered bags to print, with room for what happened')
    .action(async (options) => {
      const { schemaKeys } = await import('../schema-print.ts');
      const { project: folder, width, html, logSheet, bagSheet } = options;
      done(await schemaKeys(outside, { folder, width, html: html === true, logSheet, bagSheet }));
    });
}

function addImport(schema: Command, outside: Outside, done: Done): void {
  withWho(withProject(schema.command('import')))
    .description('take a code library imposed from elsewhere into a list: its codes kept, pairs proposed')
    .argument('<list>', 'list of logging.json; a new one is made')
    .argument('<file>', 'CSV with headings in its first line')
    .requiredOption('--code <heading>', 'column of the codes')
    .requiredOption('--label <heading>', 'column of what they are called')
    .option('--look <heading>', 'column of what to look for')
    .option('--pair <heading>', 'column of the pairs that type them')
    .option('--cgi <heading>', 'column of CGI terms')
    .option('--mineral <heading>', 'column of mineral symbols')
    .option('--density <heading>', 'column of densities, in g/cm³')
    .option('--field <name>', 'a field that takes its codes from this list from now on')
    .option('--preview', 'show what would come of it, and change nothing')
    .option('--json', 'as data')
    .action(async (list, file, options) => {
      const { importCodeLibrary } = await import('../schema-import.ts');
      const { project: folder, by, field, code, label, look, pair, cgi, mineral, density } = options;
      done(
        await importCodeLibrary(outside, {
          folder,
          by,
          list,
          file,
          columns: { code, label, look, pair, cgi, mineral, densityGcm3: density },
          field,
          preview: options.preview === true,
          json: options.json === true,
        }),
      );
    });
}
