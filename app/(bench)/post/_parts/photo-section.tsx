'use client';

import { PHOTO_LIMITS, PHOTO_TYPES, photoAddress } from '../../../../shared/schemas/photo';
import { RemoveIcon } from '../../../_components/icons';
import { Fault, Field } from './field';
import { fieldId, useForm } from './form-context';
import { usePhotos } from './use-photos';

type PhotoSectionProps = { mayPost: boolean; store: () => Promise<string | null> };

/** Photos of the unit, each with words for those who cannot see it. */
export function PhotoSection({ mayPost, store }: PhotoSectionProps) {
  const { document } = useForm();
  const { add, remove, adding, told } = usePhotos(store);
  const isFull = document.photos.length >= PHOTO_LIMITS.count;
  return (
    <section className="section" aria-labelledby="post-photos-head" id={fieldId('photos')} tabIndex={-1}>
      <h2 id="post-photos-head">Photos, if they help</h2>
      {mayPost ? null : <p>Sign in to add photos: they are kept with your draft.</p>}
      <ul className="post-photos">
        {document.photos.map((photo, i) => (
          <li key={photo.id} id={fieldId(`photos.${i}`)}>
            {/* biome-ignore lint/performance/noImgElement: the file is made in its one size already */}
            <img src={photoAddress(photo.id, 'small')} alt={photo.alt || `Photo ${i + 1}, without words yet`} />
            <PhotoWords index={i} />
            <Fault field={`photos.${i}`} />
            <button type="button" className="press press-small" onClick={() => void remove(photo.id)}>
              <RemoveIcon /> Take out<span className="sr-only"> photo {i + 1}</span>
            </button>
          </li>
        ))}
      </ul>
      <Fault field="photos" />
      {mayPost && !isFull ? (
        <div className="post-field">
          <label htmlFor="post-photo-box">Add photos</label>
          <p className="soft small" id="post-photo-hint">
            Up to {PHOTO_LIMITS.count}, JPEG, PNG or WebP. Place, time and camera are taken out of the file; what the picture itself
            shows is not: leave out faces, addresses and serial numbers.
          </p>
          <input
            id="post-photo-box"
            type="file"
            multiple
            accept={PHOTO_TYPES.join(',')}
            aria-describedby="post-photo-hint"
            aria-disabled={adding > 0}
            onChange={(event) => {
              const files = [...(event.target.files ?? [])];
              event.target.value = '';
              if (adding === 0) void add(files);
            }}
          />
        </div>
      ) : null}
      <p role="status">{adding > 0 ? `Adding ${adding === 1 ? 'a photo' : `${adding} photos`} …` : ''}</p>
      {told.length > 0 ? (
        <ul role="alert" className="field-fault">
          {told.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      ) : null}
    </section>
  );
}

function PhotoWords({ index }: { index: number }) {
  const { document, update } = useForm();
  return (
    <Field field={`photos.${index}.alt`} label={`What photo ${index + 1} shows`}>
      {(tie) => (
        <input
          {...tie}
          type="text"
          maxLength={PHOTO_LIMITS.alt}
          value={document.photos[index]?.alt ?? ''}
          onChange={(e) =>
            update((now) => ({ ...now, photos: now.photos.map((p, i) => (i === index ? { ...p, alt: e.target.value } : p)) }))
          }
        />
      )}
    </Field>
  );
}
