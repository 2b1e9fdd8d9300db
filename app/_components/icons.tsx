type IconProps = { size?: number };

function Icon({ size = 18, children }: IconProps & { children: React.ReactNode }) {
  return (
    <svg
      className="icon"
      width={size}
      height={size}
      viewBox="0 0 18 18"
      aria-hidden="true"
      focusable="false"
      fill="none"
      stroke="currentColor"
      strokeWidth="2"
    >
      {children}
    </svg>
  );
}

export function CautionIcon(props: IconProps) {
  return (
    <Icon {...props}>
      <path d="M9 1.6 17 16.4H1Z" strokeLinejoin="round" />
      <path d="M9 6.4v4.8M9 13v1.5" />
    </Icon>
  );
}

export function NoteIcon(props: IconProps) {
  return (
    <Icon {...props}>
      <path d="M2 2h14v14H2Z" />
      <path d="M9 7.8v5M9 4.7v1.6" />
    </Icon>
  );
}

export function RemoveIcon(props: IconProps) {
  return (
    <Icon {...props}>
      <path d="m3.5 3.5 11 11M14.5 3.5l-11 11" />
    </Icon>
  );
}

export function FlipIcon(props: IconProps) {
  return (
    <Icon {...props}>
      <path d="M1.5 6h13M11 2.5 14.5 6M16.5 12h-13M7 15.5 3.5 12" />
    </Icon>
  );
}

export function AddIcon(props: IconProps) {
  return (
    <Icon {...props}>
      <path d="M9 2v14M2 9h14" />
    </Icon>
  );
}

export function MenuIcon(props: IconProps) {
  return (
    <Icon {...props}>
      <path d="m4 6.5 5 5.5 5-5.5" />
    </Icon>
  );
}
