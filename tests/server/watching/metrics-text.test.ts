import { describe, expect, it } from 'vitest';
import { countProcedure } from '../../../server/watching/metrics';
import { metricsText } from '../../../server/watching/metrics-text';
import { testDatabase } from '../../setup/test-database';

const keeper = { actor: { id: 'k', role: 'keeper' as const }, authorization: null };

describe('metricsText', () => {
  it('is an exposition of the OpenMetrics text format', async () => {
    countProcedure('look.up', 'ok', 0.02);
    countProcedure('look.up', 'refused', 0.002);
    const text = await metricsText(testDatabase().db, keeper);
    expect(text?.contentType).toBe('application/openmetrics-text; version=1.0.0; charset=utf-8');
    const lines = (text?.body ?? '').split('\n');
    // OpenMetrics 1.0, "Overall structure": the last line is # EOF; "Counter": samples of a counter end in _total.
    expect(lines.slice(-2)).toEqual(['# EOF', '']);
    expect(lines).toContain('# TYPE second_bench_procedures counter');
    expect(lines).toContain('second_bench_procedures_total{procedure="look.up",ended="ok"} 1');
    expect(lines).toContain('second_bench_procedure_seconds_bucket{le="0.005",procedure="look.up"} 1');
    expect(lines).toContain('second_bench_procedure_seconds_count{procedure="look.up"} 2');
  });

  it.each([
    ['a visitor', { actor: null, authorization: null }],
    ['a moderator', { actor: { id: 'm', role: 'moderator' as const }, authorization: null }],
    ['a token, where none is set', { actor: null, authorization: 'Bearer ' }],
  ])('is not for %s', async (_, asker) => {
    expect(await metricsText(testDatabase().db, asker)).toBeNull();
  });
});
