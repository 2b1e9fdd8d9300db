import { formatCount, formatCounted } from '../../../_components/format-figures';
import { Note } from '../../../_components/note';
import { BinPlot } from './bin-plot';

type DeviceConcentrationProps = {
  devices: readonly { slug: string; name: string; cases: number; bin: number | null; isFrozen: boolean; isHigh: boolean }[];
};

const BIN_WORDS = ['under a quarter', 'a quarter to a half', 'a half to three quarters', 'three quarters or more'];

/** How much of each device's evidence comes from one contributor, in coarse bins. */
export function DeviceConcentration({ devices }: DeviceConcentrationProps) {
  const high = devices.filter(({ isHigh }) => isHigh);
  const rows = BIN_WORDS.map((label, bin) => ({ label, count: devices.filter((device) => device.bin === bin).length }));
  return (
    <>
      {high.length > 0 ? (
        <Note kind="warning">
          Half or more of what is known comes from one contributor: {high.map(({ name }) => name).join(', ')}. Ask others for
          theirs.
        </Note>
      ) : null}
      <BinPlot
        name="Share of the one with the most"
        counted="Devices"
        rows={rows}
        summary={`${formatCounted(high.length, 'device')} of ${formatCount(devices.length)} with half or more of the evidence from one contributor; the warning begins at half, from 8 cases on.`}
      />
      <details>
        <summary>Device by device</summary>
        <table className="plain-table">
          <thead>
            <tr>
              <th scope="col">Device</th>
              <th scope="col">Cases</th>
              <th scope="col">From one contributor</th>
            </tr>
          </thead>
          <tbody>
            {devices.map((device) => (
              <tr key={device.slug}>
                <th scope="row">{device.name}</th>
                <td className="figure">{formatCount(device.cases)}</td>
                <td>
                  {device.bin === null ? 'too few cases to say' : BIN_WORDS[device.bin]}
                  {device.isFrozen ? ', as it stood when a link was cut' : ''}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
    </>
  );
}
