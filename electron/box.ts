/** A box with a question over the window that a person works in, which goes away by itself when it is answered otherwise. */
import { dialog, type MessageBoxOptions } from 'electron';
import type { ShellWindows } from './windows.ts';

export interface Question<Answer extends string> {
  readonly type: NonNullable<MessageBoxOptions['type']>;
  readonly message: string;
  readonly detail: string;
  /** In the order in which they stand, with their words. The first is what Enter says. */
  readonly answers: readonly { readonly answer: Answer; readonly label: string }[];
  /** What Escape says, and what counts when the box goes away by itself. */
  readonly otherwise: Answer;
  /** The box goes away when this is aborted. */
  readonly signal?: AbortSignal;
}

export const askInBox = async <Answer extends string>(
  windows: ShellWindows,
  { type, message, detail, answers, otherwise, signal }: Question<Answer>,
): Promise<Answer> => {
  const options: MessageBoxOptions = {
    type,
    title: 'SRL Bench',
    message,
    detail,
    buttons: answers.map(({ label }) => label),
    defaultId: 0,
    cancelId: answers.findIndex(({ answer }) => answer === otherwise),
    noLink: true,
    ...(signal === undefined ? {} : { signal }),
  };
  const over = windows.inFront?.window;
  const { response } = await (over === undefined
    ? dialog.showMessageBox(options)
    : dialog.showMessageBox(over, options));
  return signal?.aborted === true ? otherwise : (answers[response]?.answer ?? otherwise);
};
