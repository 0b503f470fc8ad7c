import { useEffect, useRef } from 'react';
import { useShowing } from './task/useShowing';
import { canShare, dismiss, share } from './task/showingStore';

function saySize(bytes: number): string {
  if (bytes < 1e6) return `${Math.max(1, Math.round(bytes / 1e3))} kB`;
  return `${(bytes / 1e6).toFixed(1)} MB`;
}

/** Everything that was made, until it is dismissed. */
export function Files() {
  const files = useShowing((state) => state.files);
  const list = useRef<HTMLUListElement>(null);
  const newest = files[0]?.id;
  const known = useRef(newest);
  // Buttons that make files stand far below: a new one comes into sight.
  useEffect(() => {
    if (newest !== undefined && newest > (known.current ?? 0))
      list.current?.firstElementChild?.scrollIntoView({ block: 'nearest' });
    known.current = Math.max(newest ?? 0, known.current ?? 0);
  }, [newest]);
  if (files.length === 0) return null;
  return (
    <section aria-labelledby="showing-files">
      <h3 id="showing-files">Finished</h3>
      <ul className="files" ref={list}>
        {files.map((file) => (
          <li key={file.id}>
            <span className="files-name">{file.name}</span>
            <span className="fine">
              {file.format}, {saySize(file.blob.size)}
            </span>
            <span className="files-acts">
              <a className="plain" href={file.url} download={file.name}>
                Save
              </a>
              {canShare(file) && (
                <button type="button" className="plain" onClick={() => void share(file)}>
                  Share
                </button>
              )}
              <button
                type="button"
                className="text-button"
                aria-label={`Dismiss ${file.name}`}
                onClick={() => dismiss(file.id)}
              >
                Dismiss
              </button>
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
