import { render } from 'ink-testing-library';
import { describe, expect, it } from 'vitest';
import { themeFor } from '../../../src/console/theme.ts';
import { Frame } from '../../../src/console/widgets/frame.tsx';
import { line, spans } from '../../../src/console/widgets/line.ts';

const theme = themeFor({ colour: false, ascii: false });

describe('the frame', () => {
  it('is its lines, top to bottom, an empty one kept', () => {
    const { lastFrame } = render(<Frame lines={[line('one'), [], spans('two ', 'three')]} theme={theme} />);
    expect(
      lastFrame()
        ?.split('\n')
        .map((each) => each.trimEnd()),
    ).toEqual(['one', '', 'two three']);
  });

  it('shows what is in hand without colour, and nothing else in a tone', () => {
    const { lastFrame } = render(
      <Frame lines={[spans(['here', 'picked'], ['warned', 'warn'])]} theme={theme} />,
    );
    expect(lastFrame()).toBe('\x1b[7mhere\x1b[27mwarned');
  });

  it('shows a control character that is in data, and never sends it on', () => {
    const { lastFrame } = render(<Frame lines={[line('pyrite\x1b]0;mine\x07 2 %')]} theme={theme} />);
    expect(lastFrame()).toBe('pyrite␛]0;mine␇ 2 %');
  });

  it('paints the next state in the place of the last', () => {
    const { lastFrame, rerender } = render(<Frame lines={[line('46–47')]} theme={theme} />);
    rerender(<Frame lines={[line('47–48')]} theme={theme} />);
    expect(lastFrame()).toBe('47–48');
  });
});
