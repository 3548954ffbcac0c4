using System.Globalization;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Problems;

namespace SwingStudy.Ingestion.Intake;

/// <summary>All messages about files that come in.</summary>
internal static class IntakeMessages
{
    public static Problem HandUnknown(string file, int line, ParticipantId player, string column) => new(
        "handedness-unknown", new Place(file, line, column), $"a mirrored column, and a player ({player}) of unknown hand", "which hand the player's swing is named after: it tells the sign",
        $"Record it ('swingstudy people add {player} --set handedness=left', or right), or take 'mirror' out of the mapping.");

    public static Problem IsFolder(string file) => new("file-is-folder", new Place(file), "a folder", "a file", "Name the files in it, or copy them into inbox/<source>/.");

    public static Problem FolderClosed(string folder) => new("folder-not-readable", new Place(folder), "a folder whose files you may not list", "a folder you may read",
        "Ask its owner for the right to read it ('chmod u+rx' where it is yours), then run 'swingstudy ingest' again.");

    public static Problem FileMissing(string file) => new("file-missing", new Place(file), "no file of that name", "an export to take in",
        "Check the path; a file that a program is still copying may appear later.");

    public static Problem StillWritten(string file) => new("file-changing", new Place(file), "a file that is still being written", "a finished export",
        "Wait until the exporting program has finished, then run 'swingstudy ingest' again.");

    public static Problem FileEmpty(string file) => new("file-empty", new Place(file), "no bytes at all", "an export with rows",
        "Export it again; an interrupted copy leaves such files.");

    public static Problem SourceUnknown(string file, string folder, string? near, IEnumerable<string> sources) => new(
        "source-unknown", new Place(file), $"a folder '{folder}' of the inbox that no mapping is named after",
        $"a folder named after a source: {string.Join(", ", sources)}",
        near is null
            ? "Write a mapping ('swingstudy source suggest') or move the file."
            : $"Move the file to inbox/{near}/ if that is meant, or write a mapping ('swingstudy source suggest').");

    public static Problem NameUnexpected(string file, string pattern, string mapping) => new(
        "file-name-unexpected", new Place(file), "a name that does not fit the source's pattern", pattern, $"Rename the file, or widen 'files' in {mapping}.");

    public static Problem MappingNone(string file, IEnumerable<string> mappings) => new(
        "mapping-none", new Place(file), "no mapping whose pattern and headings fit", $"one of: {string.Join(", ", mappings)}",
        "Put the file into inbox/<source>/, or write a mapping ('swingstudy source suggest').");

    public static Problem MappingSeveral(string file, IEnumerable<string> sources) => new(
        "mapping-several", new Place(file), $"several mappings fit: {string.Join(", ", sources)}", "one", "Put the file into the inbox folder of the source that is meant.");

    public static Problem AliasUnknown(string file, int line, string alias, IReadOnlyList<(string Alias, ParticipantId Participant)> near) => new(
        "alias-unknown", new Place(file, line), $"'{alias}', a name that nobody in the study has", "a known name or code",
        near.Count == 0
            ? $"If it is a new player: 'swingstudy people add CODE --alias \"{alias}\"'."
            : $"If it is {string.Join(" or ", near.Select(pair => $"{pair.Participant} ('{pair.Alias}')"))}: 'swingstudy people add {near[0].Participant} --alias \"{alias}\"'.");

    public static Problem PlayerLeft(string file, int line, ParticipantId participant, string status) => new(
        "participant-left", new Place(file, line), $"rows of {participant} ({status})", "rows of players who take part",
        "Nothing of this file is taken. Export it again without this player's rows, or leave it out with 'swingstudy decide file'.");

    public static Problem PlayerErased(string file, int line) => new(
        "person-erased", new Place(file, line), "rows of a person who was erased from this study", "rows of players who take part",
        "Nothing of this file was stored; it lies where it lay. Delete it, or export it again without that person's rows.");

    public static Problem BytesErased(string file) => new(
        "person-erased", new Place(file), "the bytes of a file that held a person who was erased from this study", "a file without that person",
        "Nothing of this file was stored; it lies where it lay. Delete it. The rows of others in it are in the study.");

    public static Problem RowsConflict(string file, int line, int earlier) => new(
        "rows-conflict", new Place(file, line), string.Create(CultureInfo.InvariantCulture, $"the same player, time and number as line {earlier}, with other values"),
        "one row for each record", "Mend the export, or take it as it is with 'swingstudy decide file'.");

    public static Problem OverlapDiffers(string file, int line, string capture, string variable, string? before, string? after) => new(
        "overlap-differs", new Place(file, line, variable), $"{after ?? "nothing"} where the earlier file (capture {capture}) has {before ?? "nothing"}",
        "the same values where files overlap, or a new export of the whole earlier file",
        "Find out which file is right; then take this one with 'swingstudy decide file', so that its values replace the others, or leave it out.");

    public static Problem SessionTwice(string file, int line, int earlier) => new(
        "session-twice", new Place(file, line), string.Create(CultureInfo.InvariantCulture, $"the same player and start as line {earlier}, with other values"),
        "one row for each session", "Mend the sheet and save it again.");

    public static Problem RevisionLacks(string file, long rows) => new(
        "revision-lacks-rows", new Place(file), string.Create(CultureInfo.InvariantCulture, $"{rows} rows of the earlier export are not in this one"),
        "all rows of the earlier export", "They stay as they were; exclude swings by a decision if they were removed on purpose.");
}
