-- From here on a long changeset may be packed: its first byte then is a P, what follows is a zlib stream.

-- A round looks among those that have ended for those that grew at its time.
CREATE INDEX tray_by_end ON tray (ended_on, sown_on) WHERE ended_on IS NOT NULL;
