import type { DeviceModel } from '../../shared/schemas/device';
import { BRAMFIELD } from './makers';
import { partList } from './part-list';

export const bramfieldHalo: DeviceModel = {
  slug: 'bramfield-halo',
  name: 'Bramfield Halo',
  maker: BRAMFIELD,
  category: 'console',
  summary: 'Disc console with a laser drive, battery-backed saves and a mains supply inside the case.',
  synonyms: ['halo', 'bf halo'],
  boards: [
    {
      slug: 'bramfield-halo-rev-1',
      revision: '1',
      summary: 'Main board under a shield, the drive on a ribbon, the supply on a board of its own.',
      parts: partList(`
        U1         processor            LP-16     DIP 64
        U2         video-generator      BH-V      QFP 100
        U3         sprite-generator     BH-S      QFP 100
        U4         program-rom          27256     DIP 28
        U5-U8      work-ram             41256     DIP 16
        U9,U10     video-ram            4464      DIP 18
        U11        sound-generator      BH-A      QFP 64
        U12        drive-logic          BH-D      QFP 80
        U13        drive-logic          358       DIP 8
        U14        io-port              74LS257   DIP 16
        U15        address-decoder      74LS138   DIP 16
        U16        bus-buffer           74LS245   DIP 20
        U17        bus-buffer           74LS373   DIP 20
        U18        memory-timing        74LS74    DIP 14
        U19        clock-generator      74LS04    DIP 14
        U20        reset-circuit        555       DIP 8
        U21        palette              74LS374   DIP 20
        U22        sync-logic           74LS86    DIP 14
        U23        video-encoder        VE-4      DIP 16
        U24        amplifier            358       DIP 8
        Q1-Q3      video-buffer         -         TO-92 3
        Q4         switching-transistor -         TO-220 3
        X1         clock-crystal        -         can 2
        BT1        backup-battery       -         other 2
        D1-D4      rectifier            -         axial 2
        C1-C6      filter-capacitor     -         radial 2
        C7,C8      coupling-capacitor   -         radial 2
        C9         coupling-capacitor   -         radial 2
        C50        start-capacitor      -         radial 2
        C51        mains-filter-capacitor -       other 2
        C10-C33    decoupling-capacitor -         other 2
        T1         mains-transformer    -         other 6
        VR1        voltage-regulator    7805      TO-220 3
        F1         fuse                 -         axial 2
        S1         power-switch         -         other 4
        S2         reset-circuit        -         other 2
        J2         video-connector      -         connector 9
        J3         expansion-connector  -         connector 40
        J4,J5      controller-port      -         connector 9
        RN1,RN2    input-filter         -         SIP 9
        BP1,BP2    button-pad           -         other 8
        MT1        drive-motor          -         other 2
        HC1        head-carriage        -         other 1
        BL1        drive-belt           -         other 1
        LP1        laser-pickup         -         other 16
        PB1        trace                -         other 1
        PB2        solder-joint         -         other 1
      `),
      impossibleChecks: [
        'rail-12v',
        'rail-minus-5v',
        'supply-apart',
        'supply-ripple-apart',
        'supply-swapped',
        'supply-under-load',
        'other-video-output',
        'media-contacts-cleaned',
      ],
    },
  ],
};
