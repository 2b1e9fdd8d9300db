'use client';

import { useMemo } from 'react';
import type { Hazard } from '../../../../shared/schemas/terms';
import { CautionLine, Cautions } from '../../../_components/cautions';

const STORED = 'cautions-told';

/** Which step told of a hazard in full in this session; what cannot be kept is told in full again. */
function readTold(): Record<string, string> {
  try {
    return JSON.parse(window.sessionStorage.getItem(STORED) ?? '{}') as Record<string, string>;
  } catch {
    return {};
  }
}

function writeTold(told: Record<string, string>): void {
  try {
    window.sessionStorage.setItem(STORED, JSON.stringify(told));
  } catch {
    // A browser that keeps nothing is told everything each time.
  }
}

/** Which hazards of which steps are told in full: each once per session, before the first step that it concerns. */
export function useCautions(steps: readonly { key: string; cautions: readonly Hazard[] }[]): (key: string) => readonly Hazard[] {
  const shown = JSON.stringify(steps.map(({ key, cautions }) => [key, cautions]));
  const full = useMemo(() => {
    const told = readTold();
    for (const [key, cautions] of JSON.parse(shown) as [string, Hazard[]][]) for (const hazard of cautions) told[hazard] ??= key;
    writeTold(told);
    return told;
  }, [shown]);
  return (key) => (Object.keys(full) as Hazard[]).filter((hazard) => full[hazard] === key);
}

/** The cautions of a step: in full where this step is the first to tell them, else by name. */
export function StepCautions({ hazards, full }: { hazards: readonly Hazard[]; full: readonly Hazard[] }) {
  return (
    <>
      <Cautions hazards={hazards.filter((hazard) => full.includes(hazard))} />
      <CautionLine hazards={hazards.filter((hazard) => !full.includes(hazard))} />
    </>
  );
}
