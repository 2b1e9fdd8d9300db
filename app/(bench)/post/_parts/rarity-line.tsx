'use client';

import { useQuery } from '@tanstack/react-query';
import { monthSchema } from '../../../../shared/schemas/case';
import { useTrpc } from '../../../_trpc/client';
import { formatMonth } from '../../../_components/format-figures';
import { NoteIcon } from '../../../_components/icons';
import { useForm } from './form-context';

/** Said before posting where device and month single the case out; it holds nothing up. */
export function RarityLine() {
  const { document, words } = useForm();
  const trpc = useTrpc();
  const { device, month } = document;
  const place = words.devices.get(device);
  const isKnown = place !== undefined && monthSchema.safeParse(month).success;
  const { data } = useQuery(trpc.submission.rarity.queryOptions({ device, month }, { enabled: isKnown }));
  if (!isKnown || !data?.isUnique) return null;
  const [year] = month.split('-');
  const ways = [
    ...(data.hidesWithoutBoard ? ['choose the model without its board'] : []),
    ...(data.hidesWithoutMonth ? [`put January ${year} for “some time in ${year}”`] : []),
  ];
  return (
    <p className="note post-rarity" role="status">
      <NoteIcon /> No other published case is of {place.label} in {formatMonth(month)}: whoever knows of your repair can tell this case
      by that. {ways.length > 0 ? `To hide it among others, ${ways.join(', or ')}.` : 'Nothing but leaving it unposted would hide it.'}
    </p>
  );
}
