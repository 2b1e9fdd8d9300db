'use client';

type IconProps = { size?: number };

/** One of the shapes of `FigureDefs`. */
function Icon({ name, size = 18 }: IconProps & { name: string }) {
  return (
    <svg className="icon" width={size} height={size} aria-hidden="true">
      <use href={`#icon-${name}`} />
    </svg>
  );
}

export function CautionIcon(props: IconProps) {
  return <Icon name="caution" {...props} />;
}

export function NoteIcon(props: IconProps) {
  return <Icon name="note" {...props} />;
}

export function RemoveIcon(props: IconProps) {
  return <Icon name="remove" {...props} />;
}

export function FlipIcon(props: IconProps) {
  return <Icon name="flip" {...props} />;
}

export function AddIcon(props: IconProps) {
  return <Icon name="add" {...props} />;
}

export function MenuIcon(props: IconProps) {
  return <Icon name="menu" {...props} />;
}
