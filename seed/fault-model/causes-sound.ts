import { type Causes, cause } from './cause';

/** Sound, from the generator to the jack. */
export const soundCauses: Causes = {
  'sound-generator-dead': cause(
    2.5,
    0.06,
    'sound-generator-output=flat:.93 sound-generator-swapped=cured:.95 amplifier-input=flat:.85 sound-other-output=same-fault:.93 tone-injected=heard amplifier-output=flat:.8',
    [
      [4, '@no-sound:.9'],
      [1, '@no-sound:.5 @stuck-tone:.5'],
      [0.7, '@no-sound:.8 @direction-dead:.3 @all-keys-dead:.15'],
      [0.6, 'black data-lines=some-stuck:.6 wild-program'],
    ],
  ),
  'sound-generator-voice-lost': cause(
    1.5,
    0.1,
    'sound-generator-swapped=cured:.95 sound-other-output=same-fault:.9 sound-generator-output=distorted:.4',
    [
      [4, '@missing-voice:.88'],
      [1, '@distorted-sound:.7 sound-generator-output=distorted:.85'],
      [1, '@stuck-tone:.8'],
    ],
  ),
  'amplifier-dead': cause(
    2.9,
    0.1,
    'amplifier-output=flat:.92 amplifier-input=active sound-generator-output=active tone-injected=silent:.9 sound-other-output=good-there',
    [
      [4, '@no-sound:.92'],
      [1, '@no-sound:.5 @quiet-sound:.5'],
      [1, '@no-sound:.8 @hum-in-sound:.3 amplifier-supply=low:.3'],
      [0.6, '@sound-one-side:.85'],
    ],
  ),
  'amplifier-distorting': cause(
    1.5,
    0.2,
    'amplifier-output=distorted:.88 amplifier-input=active tone-injected=distorted:.85 sound-other-output=good-there',
    [
      [4, '@distorted-sound:.88'],
      [1, 'thermal @distorted-sound:.7'],
      [1, '@quiet-sound:.6 @distorted-sound:.4'],
    ],
  ),
  'sound-coupling-dried': cause(
    3.9,
    0.1,
    'amplifier-input=weak:.8 amplifier-input=flat:.1 capacitor-esr=high:.35 sound-generator-output=active sound-other-output=good-there:.7',
    [
      [4, '@quiet-sound:.85'],
      [2, '@distorted-sound:.5 @quiet-sound:.4'],
      [1, '@no-sound:.8 amplifier-input=flat:.7'],
      [1, '@hum-in-sound:.6 @crackling-sound:.3'],
      [0.8, '@sound-one-side:.8'],
    ],
  ),
  'speaker-open': cause(
    1.5,
    0.15,
    'speaker-resistance=open:.94 amplifier-output=active headphones-tried=sound tone-injected=silent:.9 sound-other-output=good-there',
    [
      [4, '@no-sound:.9'],
      [2, '@headphones-only:.85 @no-sound:.2'],
    ],
  ),
  'speaker-torn': cause(
    1.2,
    0.05,
    'speaker-resistance=normal amplifier-output=active tone-injected=distorted:.85 headphones-tried=sound',
    [
      [4, '@distorted-sound:.85'],
      [2, '@crackling-sound:.6 @distorted-sound:.4 @rattles:.2'],
    ],
  ),
  'volume-control-worn': cause(3.4, 0.3, 'volume-moved=crackles:.9 volume-moved=no-effect:.06', [
    [4, '@crackling-sound:.88'],
    [1, '@no-sound:.4 @quiet-sound:.4'],
    [1, '@sound-one-side:.7 @crackling-sound:.3'],
  ]),
  'headphone-jack-stuck': cause(
    2.7,
    0.3,
    'headphones-tried=sound amplifier-output=active speaker-resistance=normal volume-moved=no-effect:.3',
    [
      [4, '@headphones-only:.85 @no-sound:.3'],
      [1, '@no-sound:.85'],
      [1, '@sound-one-side:.5 @crackling-sound:.4'],
    ],
  ),
};
