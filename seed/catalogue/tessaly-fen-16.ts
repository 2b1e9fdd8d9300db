import type { DeviceModel } from '../../shared/schemas/device';
import { TESSALY } from './makers';
import { partList } from './part-list';

export const tessalyFen16: DeviceModel = {
  slug: 'tessaly-fen-16',
  name: 'Tessaly Fen 16',
  maker: TESSALY,
  category: 'home-computer',
  summary: '16-bit home computer in a keyboard case, with a built-in disk drive, a battery-backed clock and RGB output.',
  synonyms: ['fen 16', 'fen16', 'tessaly fen', 'fen'],
  boards: [
    {
      slug: 'tessaly-fen-16-rev-1',
      revision: '1',
      summary: 'One board with the disk controller on it, 512 KB in 41256 chips, and a soldered battery near the sound chip.',
      parts: partList(`
        U1         processor            LP-16     DIP 64
        U2         video-generator      TF-VC1    QFP 84
        U3         program-rom          27256     DIP 28
        U4         program-rom          27256     DIP 28
        U5         io-port              IA-20     DIP 40
        U6         io-port              IA-20     DIP 40
        U7         sound-generator      SG-12     DIP 28
        U8         disk-controller      DC-7      DIP 28
        U9         address-decoder      74LS138   DIP 16
        U10        address-decoder      74LS139   DIP 16
        U11,U12    bus-buffer           74LS245   DIP 20
        U13,U14    bus-buffer           74LS373   DIP 20
        U15        memory-timing        74LS74    DIP 14
        U16        memory-timing        74LS00    DIP 14
        U17-U19    address-multiplexer  74LS157   DIP 16
        U20-U35    work-ram             41256     DIP 16
        U36,U37    video-ram            4464      DIP 18
        U38        clock-generator      74LS04    DIP 14
        U39        clock-generator      74LS161   DIP 16
        U40        reset-circuit        555       DIP 8
        U41        palette              74LS374   DIP 20
        U42        sync-logic           74LS86    DIP 14
        U43        drive-logic          7406      DIP 14
        U44        video-encoder        VE-4      DIP 16
        U45        tape-interface       339       DIP 14
        U46        amplifier            386       DIP 8
        U47        sync-logic           74LS74    DIP 14
        Q1-Q3      video-buffer         -         TO-92 3
        Q4         switching-transistor -         TO-220 3
        X1         clock-crystal        -         can 2
        CT1        colour-trimmer       -         radial 2
        BT1        backup-battery       -         other 2
        D1-D4      rectifier            -         axial 2
        C1-C5      filter-capacitor     -         radial 2
        C6         start-capacitor      -         radial 2
        C7,C8      coupling-capacitor   -         radial 2
        C9         coupling-capacitor   -         radial 2
        C50        mains-filter-capacitor -       other 2
        C10-C36    decoupling-capacitor -         axial 2
        T1         mains-transformer    -         other 6
        VR1        voltage-regulator    7805      TO-220 3
        VR2        voltage-regulator    7812      TO-220 3
        F1         fuse                 -         axial 2
        S1         power-switch         -         other 4
        S2         reset-circuit        -         other 2
        J2         video-connector      -         connector 13
        J3         expansion-connector  -         connector 60
        J4,J5      controller-port      -         connector 9
        J6         ribbon-cable         -         connector 34
        J7         ribbon-cable         -         connector 16
        RN1,RN2    input-filter         -         SIP 9
        KB1        keyboard             -         other 24
        SP1        speaker              -         other 2
        XU1        ic-socket            -         DIP 64
        XU2        ic-socket            -         PLCC 84
        XU3,XU4    ic-socket            -         DIP 28
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
        'io-port-swapped',
        'rail-minus-5v',
        'sound-generator-swapped',
        'supply-apart',
        'supply-ripple-apart',
        'supply-swapped',
        'supply-under-load',
      ],
    },
  ],
};
