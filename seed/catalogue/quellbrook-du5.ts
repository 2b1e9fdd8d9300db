import type { DeviceModel } from '../../shared/schemas/device';
import { QUELLBROOK } from './makers';
import { partList } from './part-list';

export const quellbrookDu5: DeviceModel = {
  slug: 'quellbrook-du5',
  name: 'Quellbrook DU5',
  maker: QUELLBROOK,
  category: 'drive',
  summary: 'Single disk drive in its own case, with its own mains supply and controller, for the Quellbrook computers.',
  synonyms: ['du5', 'du-5', 'quellbrook drive'],
  boards: [
    {
      slug: 'quellbrook-du5-rev-1',
      revision: '1',
      summary: 'Controller board over the mechanism; belt-driven spindle, 7805 and 7812 on the rear plate.',
      parts: partList(`
        U1         disk-controller      DC-7      DIP 28
        U2         drive-logic          74LS14    DIP 14
        U3         drive-logic          7406      DIP 14
        U4         drive-logic          74LS74    DIP 14
        U5         drive-logic          74LS32    DIP 14
        U6         drive-logic          74LS139   DIP 16
        U7         drive-logic          358       DIP 8
        U8         drive-logic          339       DIP 14
        U9         drive-logic          74LS244   DIP 20
        U10        drive-logic          74LS374   DIP 20
        U11        drive-logic          74LS161   DIP 16
        Q1-Q6      drive-logic          -         TO-220 3
        VR1        voltage-regulator    7805      TO-220 3
        VR2        voltage-regulator    7812      TO-220 3
        T1         mains-transformer    -         other 6
        D1-D4      rectifier            -         axial 2
        X1         clock-crystal        -         can 2
        C1-C4      filter-capacitor     -         radial 2
        C5-C7      mains-filter-capacitor -       other 2
        C10-C27    decoupling-capacitor -         axial 2
        D5,D6      protection-diode     -         axial 2
        F1         fuse                 -         axial 2
        S1         power-switch         -         other 4
        J1         ribbon-cable         -         connector 34
        J2         ribbon-cable         -         connector 10
        MT1        drive-motor          -         other 4
        BL1        drive-belt           -         other 1
        HD1        read-head            -         other 4
        HC1        head-carriage        -         other 1
        TS1        track-zero-sensor    -         other 4
        TS2        index-sensor         -         other 4
        TS3        write-protect-sensor -         other 4
        PB1        trace                -         other 1
        PB2        solder-joint         -         other 1
      `),
      impossibleChecks: [
        'azimuth-by-ear',
        'supply-swapped',
        'supply-apart',
        'supply-under-load',
        'supply-ripple-apart',
        'pinch-roller-inspected',
      ],
    },
  ],
};
