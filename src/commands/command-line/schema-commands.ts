import { type Command, InvalidArgumentError } from 'commander';
import type { Outside } from '../../desk/outside.ts';
import { type Done, inLines, shared, wholeNumber } from './options.ts';

/** Adds the commands about the logging schema. */
export function addSchemaCommands(program: Command, outside: Outside, done: Done): void {
  const schema = program
    .command('schema')
    .description(
      'the logging schema: check it, propose and print its keys, take a code library in, export it',
    );
  addCheck(schema, outside, done);
  addKeys(schema, outside, done);
  addPropose(schema, outside, done);
  schema
    .command('diff')
    .description('what two projects, rigs or files log differently: fields, scales, codes, strokes')
    .argument('<first>', "a project's folder, a logging.json, or the name of a style")
    .argument('<second>', 'the other one')
    .action(async (first, second, _options, command: Command) => {
      const { diffSchemas } = await import('../schema-diff.ts');
      done(await diffSchemas(outside, { ...shared(command), first, second }));
    });
  addImport(schema, outside, done);
  addField(schema, outside, done);
  schema
    .command('dictionary')
    .description(
      'take fields, lists and scales of one CSV into the project’s logging.json, with pairs for all',
    )
    .argument('<file>', 'CSV: part (field, list, code, scale, level), name, and what else a part has')
    .option('--preview', 'show what would come of it, and change nothing')
    .action(async (file, options, command: Command) => {
      const { takeDictionaryIn } = await import('../schema-dictionary.ts');
      done(await takeDictionaryIn(outside, { ...shared(command), file, preview: options.preview === true }));
    });
  schema
    .command('export')
    .description('print the JSON Schema of the rows that are logged')
    .action(async (_options, command: Command) => {
      const { exportSchema } = await import('../schema-print.ts');
      done(await exportSchema(outside, shared(command)));
    });
  schema
    .command('editor')
    .description(
      'put the JSON Schemas of the project’s files beside them, for an editor to complete and check by',
    )
    .action(async (_options, command: Command) => {
      const { schemasForEditor } = await import('../schema-editor.ts');
      done(await inLines(outside, command, (printing) => schemasForEditor(printing, shared(command))));
    });
}

function addCheck(schema: Command, outside: Outside, done: Done): void {
  schema
    .command('check')
    .description('check a logging schema, and what it changes for the holes beside it')
    .argument('[file]', "a logging.json, or the name of a style; the project's if not given")
    .option('--against <file>', 'say what it changes of another logging.json or style')
    .option('--accept', "accept the warnings of the project's logging.json: they are not said again")
    .action(async (file, { against, accept }, command: Command) => {
      const { checkSchemaFile } = await import('../schema.ts');
      done(await checkSchemaFile(outside, { ...shared(command), file, against, accept: accept === true }));
    });
}

function addKeys(schema: Command, outside: Outside, done: Done): void {
  schema
    .command('keys')
    .description(
      'print everything that can be typed on one page; or a blank sheet for the day the laptop dies',
    )
    .option('--width <columns>', 'columns of the page', wholeNumber, 100)
    .option('--html', 'a page to print, for the sun visor')
    .option('--log-sheet <hole>', 'a blank log sheet of a hole to print, from the logged metre down')
    .option('--bag-sheet <hole>', 'a sheet of its numbered bags to print, with room for what happened')
    .action(async (options, command: Command) => {
      const { schemaKeys } = await import('../schema-print.ts');
      const asked = { ...shared(command), ...options, html: options.html === true };
      done(await inLines(outside, command, (printing) => schemaKeys(printing, asked)));
    });
}

function addPropose(schema: Command, outside: Outside, done: Done): void {
  schema
    .command('propose')
    .description('propose pairs and keys: near to what a person would guess, apart enough that a slip shows')
    .argument('[file]', "a logging.json, or the name of a style; the project's if not given")
    .option('--list <names...>', 'only codes of these lists')
    .option('--again', 'look for better ones for what has some; what was logged with stays')
    .option('--keys', 'single keys too, for amounts')
    .option('--apart', 'no two one slip apart, so that the check has nothing to warn of; harder to guess')
    .option('--write', "put them into the project's logging.json")
    .option('--print', 'print the file with them in it')
    .action(async (file, options, command: Command) => {
      const { proposeForSchema } = await import('../schema-propose.ts');
      done(
        await proposeForSchema(outside, {
          ...shared(command),
          file,
          lists: options.list,
          again: options.again === true,
          keys: options.keys === true,
          apart: options.apart === true,
          write: options.write === true,
          print: options.print === true,
        }),
      );
    });
}

function addField(schema: Command, outside: Outside, done: Done): void {
  schema
    .command('field')
    .description('change a field of the log sheet: its words, its place, whether it is required; retire it')
    .argument('<name>', 'field, by its name in logging.json')
    .option('--label <words>', 'what it is called')
    .option('--after <field>', 'move it behind this one')
    .option('--first', 'move it to the front')
    .option('--required <yes>', 'yes or no: a row can’t be saved without it', yesOrNo)
    .option('--retire [date]', 'take it off the log sheet from a date on, today if none is given')
    .option('--preview', 'show what would come of it, and change nothing')
    .action(async (field, options, command: Command) => {
      const { changeSchemaField } = await import('../schema-field.ts');
      const { label, required, retire } = options;
      const after = options.first === true ? '' : options.after;
      const change = {
        ...(label === undefined ? {} : { label }),
        ...(after === undefined ? {} : { after }),
        ...(required === undefined ? {} : { required }),
      };
      done(
        await changeSchemaField(outside, {
          ...shared(command),
          field,
          change,
          retire,
          preview: options.preview === true,
        }),
      );
    });
}

function yesOrNo(typed: string): boolean {
  if (typed === 'yes' || typed === 'no') return typed === 'yes';
  throw new InvalidArgumentError('Say yes or no.');
}

function addImport(schema: Command, outside: Outside, done: Done): void {
  schema
    .command('import')
    .description('take a code library imposed from elsewhere into a list: its codes kept, pairs proposed')
    .argument('<list>', 'list of logging.json; a new one is made')
    .argument('<file>', 'CSV with headings in its first line')
    .requiredOption('--code <heading>', 'column of the codes')
    .requiredOption('--label <heading>', 'column of what they are called')
    .option('--look <heading>', 'column of what to look for')
    .option('--pair <heading>', 'column of the pairs that type them')
    .option('--cgi <heading>', 'column of CGI terms')
    .option('--mineral <heading>', 'column of mineral symbols')
    .option(
      '--density <heading>',
      'column of densities, in g/cm³: of fresh rock, which weathering reduces; of saprolite, laterite, soil and the like as they lie',
    )
    .option(
      '--caution <heading>',
      'column of dangers: void, fibre, silica dust, radiation, loss of return, other; own words after a colon',
    )
    .option('--drop-cautions', 'go on though dangers could no longer be logged as such')
    .option('--field <name>', 'a field that takes its codes from this list from now on')
    .option('--preview', 'show what would come of it, and change nothing')
    .action(async (list, file, options, command: Command) => {
      const { importCodeLibrary } = await import('../schema-import.ts');
      const { field, code, label, look, pair, cgi, mineral, density, caution } = options;
      done(
        await importCodeLibrary(outside, {
          ...shared(command),
          list,
          file,
          columns: { code, label, look, pair, cgi, mineral, densityGcm3: density, caution },
          field,
          dropCautions: options.dropCautions === true,
          preview: options.preview === true,
        }),
      );
    });
}
