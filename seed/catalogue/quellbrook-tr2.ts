import type { DeviceModel } from '../../shared/schemas/device';
import { QUELLBROOK } from './makers';
import { partList } from './part-list';

export const quellbrookTr2: DeviceModel = {
  slug: 'quellbrook-tr2',
  name: 'Quellbrook TR2',
  maker: QUELLBROOK,
  category: 'drive',
  summary: 'Tape recorder for programs, with its own amplifier and motor control, fed by a 6 V adapter.',
  synonyms: ['tr2', 'tr-2', 'quellbrook recorder'],
  boards: [
    {
      slug: 'quellbrook-tr2-rev-1',
      revision: '1',
      summary: 'One small board under the mechanism: head amplifier, erase oscillator, motor control.',
      parts: partList(`
        U1         drive-logic          358       DIP 8
        U2         drive-logic          339       DIP 14
        U3         drive-logic          74LS14    DIP 14
        U4         drive-logic          555       DIP 8
        Q1-Q9      drive-logic          -         TO-92 3
        Q10        drive-logic          -         TO-220 3
        VR1        voltage-regulator    78L05     TO-92 3
        C1-C6      filter-capacitor     -         radial 2
        C10-C19    decoupling-capacitor -         axial 2
        D1-D3      protection-diode     -         axial 2
        F1         fuse                 -         axial 2
        S1         power-switch         -         other 6
        J1         power-input-jack     -         connector 2
        J2         ribbon-cable         -         connector 7
        MT1        drive-motor          -         other 2
        BL1,BL2    drive-belt           -         other 1
        HD1        read-head            -         other 4
        HD2        read-head            -         other 2
        PR1        pinch-roller         -         other 1
        PB1        trace                -         other 1
        PB2        solder-joint         -         other 1
      `),
      impossibleChecks: ['disk-alignment', 'rail-12v', 'mains-lead-swapped', 'drive-swapped'],
    },
  ],
};
