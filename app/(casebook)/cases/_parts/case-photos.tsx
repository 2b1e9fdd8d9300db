import { type PhotoView, photoAddress } from '../../../../shared/schemas/photo';

/** The photos of a case, each a link to its larger file; nothing where there are none. */
export function CasePhotos({ photos }: { photos: PhotoView[] }) {
  if (photos.length === 0) return null;
  return (
    <section className="section" aria-labelledby="photos-head">
      <h2 id="photos-head">Photos</h2>
      <ul className="case-photos">
        {photos.map(({ id, alt, width, height }) => (
          <li key={id}>
            <figure>
              <a href={photoAddress(id, 'large')}>
                {/* biome-ignore lint/performance/noImgElement: the file is made in its two sizes already */}
                <img src={photoAddress(id, 'small')} alt={alt} width={width} height={height} loading="lazy" />
              </a>
              <figcaption aria-hidden="true">{alt}</figcaption>
            </figure>
          </li>
        ))}
      </ul>
    </section>
  );
}
