/** A line for a PIN: hidden, and digits first where there is a keyboard on the screen. */
import { TextInput, type TextInputProps } from '../../components/text-input.tsx';

export const PinInput = (props: Omit<TextInputProps, 'type' | 'inputMode'>) => (
  <TextInput {...props} type="password" inputMode="numeric" />
);
