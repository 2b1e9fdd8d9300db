const PLACES: Record<string, string> = {
  device: 'Device',
  month: 'Month',
  ownWords: 'Own words',
  symptoms: 'Symptoms',
  steps: 'Checks and fixes',
  causes: 'Cause',
  proof: 'Proof',
  provedBy: 'Check that proved it',
  outcome: 'Outcome',
  afterRepairChecks: 'Checks after the repair',
  soakMinutes: 'Soak time',
  readings: 'Readings at pins',
  narrative: 'Your words',
  photos: 'Photos',
  proposals: 'New word',
  kept: 'Details kept',
};

/** Where in the form a field is, as its reader would say it: `Step 3` for `steps.2.outcome`. */
export function placeOfField(field: string): string {
  const [first = '', second] = field.split('.');
  if (first === 'steps' && second !== undefined) return `Step ${Number(second) + 1}`;
  if (first === 'readings' && second !== undefined) return `Reading ${Number(second) + 1}`;
  if (first === 'photos' && second !== undefined) return `Photo ${Number(second) + 1}`;
  return PLACES[first] ?? 'The form';
}
