import type { RunLabelled } from '../acts/number-bags.ts';
import type { RangeCommand } from '../acts/range-plan.ts';
import type { RejectedPart } from '../acts/shot.ts';
import type { CollarState } from '../hole/ending.ts';
import type { HoleState } from '../hole/header.ts';
import type { Depth } from '../quantity/depth.ts';
import type { DocumentName, Id } from '../record/document.ts';
import type { RodSeen } from '../sampling/rod/mismatch.ts';
import type { NewPlodLine, SheetPart } from '../shift/plod-line.ts';
import type { RangeLine } from '../shorthand/commands.ts';
import type { RunSaid } from '../survey/shots/run-said.ts';
import type { Draft } from './draft.ts';

/** A step of ending a hole: the depth by rod count, what is still open, the collar, the reason where one is needed. */
type EndingStep = 'depth' | 'open' | 'collar' | 'reason';

/** What of a code can be changed on the rig. */
export type CodeMember = 'label' | 'look' | 'pair' | 'key' | 'retiredSince' | 'provisional' | 'after';

/** What of a field can be changed on the rig. */
export type FieldMember = 'label' | 'after' | 'required' | 'retiredSince';

/** Set once Enter was pressed on an answer that takes one deliberate key more (see deliberate.ts). */
interface Sure {
  readonly sure?: 'asked';
}

/** A line of a plod that is typed field by field: which field is in hand, and what was typed in each. */
export interface PlodForm {
  readonly field: number;
  readonly values: { readonly [name: string]: string };
}

/** A question that is above the screen until it is answered or left with Escape. One at a time; nothing else takes keys. */
export type Prompt =
  /** Rod done: what is expected, and the digits typed where this bag says otherwise. */
  | { readonly kind: 'rod'; readonly rod: number; readonly depthMm: Depth; readonly draft: Draft }
  /** The rod check did not agree: the mismatch by name. Enter records the rod as the bags on the ground say, with the mismatch noted. */
  | {
      readonly kind: 'mismatch';
      readonly rod: number;
      readonly depthMm: Depth;
      readonly lastDigits: string;
      /** What further looks told, asked one by one. */
      readonly looked: RodSeen;
      /** Ways to mend it, a page of them. */
      readonly page: number;
      /** A mismatch noted before at this rod, mended now. */
      readonly later?: Id;
      readonly draft: Draft;
    }
  /** A change of several rows, shown in words before it is made. */
  | {
      readonly kind: 'preview';
      readonly title: string;
      readonly lines: readonly string[];
      readonly range: RangeLine | RangeCommand;
    }
  | { readonly kind: 'new hole'; readonly draft: Draft }
  | ({ readonly kind: 'state'; readonly hole: string; readonly to: HoleState; readonly draft: Draft } & Sure)
  | { readonly kind: 'redrill'; readonly hole: string; readonly draft: Draft }
  | {
      readonly kind: 'ending';
      readonly step: EndingStep;
      readonly depthMm: number;
      readonly collar: CollarState['state'];
      /** The rules ask, no one was named as called, and that was pointed out. */
      readonly unreached?: true;
      readonly draft: Draft;
    }
  /** A survey run that is begun: what is said of it, step by step; `shot` waits for it, as typed. */
  | {
      readonly kind: 'survey run';
      readonly step: number;
      readonly said: Partial<RunSaid>;
      /** The run begun last on any hole: 0 begins one like it. */
      readonly like: RunSaid | undefined;
      readonly draft: Draft;
      readonly shot: string;
    }
  /** An edit that is asked about before it is taken back, in words. */
  | { readonly kind: 'undo'; readonly what: string; readonly inHand: DocumentName | undefined }
  /** A shot as read out; `corrects` the reading of one that is there. */
  | { readonly kind: 'shot'; readonly draft: Draft; readonly corrects?: true }
  /** Why a shot or its azimuth alone is rejected, or used again. */
  | ({
      readonly kind: 'rejection';
      readonly shot: Id;
      readonly part: RejectedPart;
      readonly draft: Draft;
    } & Sure)
  /** A code that the lists lack; `cursor` is its list. While it is being added the prompt stands. */
  | {
      readonly kind: 'new code';
      readonly cursor: number;
      readonly draft: Draft;
      readonly adding: boolean;
    }
  /** A code of a list that is changed: which of its members is in hand, and what is typed for it. */
  | ({
      readonly kind: 'change code';
      readonly list: string;
      readonly code: string;
      readonly member: CodeMember;
      readonly draft: Draft;
      readonly adding: boolean;
    } & Sure)
  /** A field of the log sheet that is changed: which of its members is in hand, and what is typed for it. */
  | ({
      readonly kind: 'change field';
      readonly field: string;
      readonly member: FieldMember;
      readonly draft: Draft;
      readonly adding: boolean;
    } & Sure)
  /** The folder to go on in; while everything is being written there it stands, and after a failure with what was typed. */
  | { readonly kind: 'elsewhere'; readonly draft: Draft; readonly moving: boolean }
  /** Leaving while the shift goes on (`open` says what it leaves open), or with rows that are not saved: it waits for the disk, or for the word typed in full. */
  | { readonly kind: 'leaving'; readonly draft: Draft; readonly open: readonly string[] }
  /** A document whose file is gone: restored from the journal, or let go with the reason. */
  | ({ readonly kind: 'missing'; readonly document: DocumentName; readonly draft: Draft } & Sure)
  /** Why a finding is accepted as it is; `facts` says which. */
  | { readonly kind: 'accept'; readonly facts: string; readonly draft: Draft }
  /** A dispatch to be made up: bags, seal and laboratory as typed; nothing typed is everything that waits. */
  | { readonly kind: 'dispatch'; readonly draft: Draft }
  /** Single metres that returned results ask for, with the numbers labelled for them. */
  | { readonly kind: 'resplit'; readonly numbers?: RunLabelled }
  /** Sacks change hands: which dispatch (the latest first), who takes them and what was counted, as typed. */
  | ({ readonly kind: 'hand over'; readonly cursor: number; readonly draft: Draft } & Sure)
  | { readonly kind: 'activity'; readonly cursor: number }
  /** A plod that is being typed, line by line; nothing of it is recorded before the empty line that ends it. */
  | {
      readonly kind: 'plod';
      readonly shift: string;
      readonly sheet: string;
      readonly from?: string;
      /** A second sheet of a shift that has one. */
      readonly second: boolean;
      /** What was said of the sheet as a whole: crew, remark. */
      readonly part: SheetPart;
      readonly lines: readonly { readonly text: string; readonly line: NewPlodLine }[];
      /** The next line field by field; what is typed stands in the draft. */
      readonly form?: PlodForm;
      /** Escape was pressed: another drops the lines. */
      readonly dropping?: true;
      /** The gap was shown: another empty line records it so. */
      readonly gapShown: boolean;
      readonly draft: Draft;
    }
  /** A line of the shift record, of the latest shift unless one is named. */
  | {
      readonly kind: 'shift line';
      readonly shift?: string;
      /** It was opened with everything of an entry: what is not on it any more is taken out. */
      readonly whole?: true;
      /** The shift is ended though its record leaves this open: it is shown, and Enter once more ends it. */
      readonly open?: readonly string[];
      readonly draft: Draft;
    }
  /** A scanned bag that is not where or what it should be: read whole, for its remedy may take hands near the machine. */
  | { readonly kind: 'scanned'; readonly number: string; readonly said: string; readonly ground: string }
  /** Bags labelled for a hole, also the evening before it is started. */
  | { readonly kind: 'number bags'; readonly hole: string; readonly draft: Draft }
  | { readonly kind: 'reopen'; readonly hole: string; readonly draft: Draft };
