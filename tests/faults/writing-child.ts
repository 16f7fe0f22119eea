// A console without a screen: logs metre after metre and says on its standard output what it was told is saved, until it
// is killed. Arguments: the project folder, and the metre to go on from.
import { randomBytes } from 'node:crypto';
import { openDesk } from '../../src/desk/desk.ts';
import { HOLE, holeMade, rowLogged, tickingClock } from '../desk/support/values.ts';

const [folder = '', start = '0'] = process.argv.slice(2);
const opened = await openDesk({
  folder,
  person: 'Ana Reyes',
  clock: tickingClock(),
  random: (bytes) => new Uint8Array(randomBytes(bytes)),
  idleMs: 1,
});
if (!opened.ok) {
  process.stderr.write(`${opened.findings.map((finding) => finding.problem).join('\n')}\n`);
  process.exit(2);
}
const desk = opened.value;
if (desk.get(HOLE) === undefined)
  desk.submit({ what: 'hole made', parts: [{ document: HOLE, changes: holeMade() }] });
for (let metre = Number(start); ; metre += 1) {
  const logged = desk.submit({
    what: `${metre} logged`,
    parts: [{ document: HOLE, changes: [rowLogged(desk.newId(), metre)] }],
  });
  if (!logged.ok) throw new Error(logged.problem);
  const saved = await logged.durable;
  if (saved.ok) process.stdout.write(`${metre}\n`);
  // Now and then the person pauses: files are written, a new generation begins.
  if (metre % 7 === 0) await new Promise((done) => setTimeout(done, 4));
}
