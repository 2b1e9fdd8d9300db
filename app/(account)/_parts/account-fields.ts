import { NAME_LENGTH, PASSWORD_LENGTH } from '../../../shared/schemas/account';
import type { Field } from './account-form';

export const NAME_FIELD: Field = { name: 'name', label: 'Name', type: 'text', autoComplete: 'username' };
export const PASSWORD_FIELD: Field = { name: 'password', label: 'Password', type: 'password', autoComplete: 'current-password' };

export const NEW_NAME_FIELD: Field = {
  ...NAME_FIELD,
  hint: `${NAME_LENGTH.min} to ${NAME_LENGTH.max} letters, digits, full stops, hyphens or underscores. It never stands on a published case; better still, choose one that does not say who you are.`,
};
export const NEW_PASSWORD_FIELD: Field = {
  name: 'password',
  label: 'New password',
  type: 'password',
  autoComplete: 'new-password',
  hint: `At least ${PASSWORD_LENGTH.min} characters; a few words in a row do well.`,
};
export const OLD_PASSWORD_FIELD: Field = {
  name: 'current',
  label: 'Password so far',
  type: 'password',
  autoComplete: 'current-password',
};
