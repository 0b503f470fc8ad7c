import { loadOpeners } from '../../export/link/incomingLinks';

/** The way in for a file where nothing can be dropped on the page: on a phone, or with keys. */
export function OpenFile() {
  const open = (file: File): Promise<void> => loadOpeners(({ openFile }) => openFile(file));
  return (
    <label className="plain showing-open">
      Open a picture, clip or model
      <input
        type="file"
        accept="image/*,video/*,.svg,.glb"
        onChange={({ currentTarget }) => {
          const [file] = currentTarget.files ?? [];
          // The same file can be chosen again.
          if (file) void open(file).finally(() => (currentTarget.value = ''));
        }}
      />
    </label>
  );
}
