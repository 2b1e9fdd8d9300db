import { STAGES, type Stage } from '../../shared/schemas/terms';

/** What a stage is called. */
export function stageLabel(stage: Stage): string {
  return STAGES.find((entry) => entry.stage === stage)?.label ?? '';
}

/** The square that carries a stage's number. */
export function StageMark({ stage }: { stage: Stage }) {
  return (
    <span className="stage-mark">
      <span className="sr-only">Stage </span>
      {stage}
    </span>
  );
}
