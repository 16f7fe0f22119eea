import { receivedWords } from '../../desk/arriving/received-words.ts';
import type { State } from '../state.ts';
import { type Step, saying, still } from '../step.ts';
import { type Line, line, wrap } from '../widgets/line.ts';
import { type Listed, oneSection } from './listed.ts';
import { openOver } from './lists.ts';

const TITLE = 'received';
const MAY_CLEAR = /\s+may clear$/i;

/** Takes in the file named, and shows what comes of it: `may clear` behind it takes a copy that takes much away, too. */
export function receiveSaid(state: State, text: string): Step {
  const file = text.replace(MAY_CLEAR, '').trim();
  if (file === '') return askFile(state);
  const [over] = openOver('received')(state);
  return [{ ...over, received: undefined }, [{ do: 'receive', file, mayClear: MAY_CLEAR.test(text) }]];
}

/** Says what to type: the file that came. */
export function askFile(state: State): Step {
  const words =
    'Type the file that came behind it, a bundle or a saved mail: ;receive reply.eml. Several one after the other, in any order.';
  return still(saying(state, words));
}

/** What came of the file received last. */
export function receivedList({ received }: State, width: number): Listed {
  if (received === undefined) return oneSection(TITLE, [[line('Taking it in …')]]);
  const asked = received.reduce(
    (sum, each) => sum + (each.kind === 'taken' && each.taken.ok === true ? each.taken.asked.length : 0),
    0,
  );
  const items = received.map((each): readonly Line[] => {
    const words = receivedWords(each, 'may clear behind the file');
    if (words.fine) return words.lines.flatMap((text) => wrap(text, width));
    const troubles = 'findings' in words ? words.findings : [words];
    return troubles.flatMap(({ place, problem, remedy }) => [
      ...wrap(`${[place.file, place.thing].filter(Boolean).join(', ')}: ${problem}`, width, 'alert'),
      ...wrap(remedy, width, 'accent'),
    ]);
  });
  const settle =
    asked === 0
      ? []
      : [wrap(';questions (w on the list of holes) shows them, and settles each.', width, 'accent')];
  return oneSection(TITLE, [...items, ...settle]);
}
