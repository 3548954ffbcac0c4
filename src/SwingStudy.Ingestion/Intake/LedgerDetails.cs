using System.Text.Json;
using SwingStudy.Domain.Problems;
using SwingStudy.Storage.Registry;

namespace SwingStudy.Ingestion.Intake;

/// <summary>What the ledger and the registry keep of a file: counts, hashes and codes, no names and no values of a person.</summary>
internal static class LedgerDetails
{
    /// <summary>A file that was taken.</summary>
    public static string Taken(PendingFile file) => JsonSerializer.Serialize(new
    {
        original = file.Record.Hash.ToString(),
        source = file.Record.Source,
        mapping = file.Record.MappingHash?.ToString(),
        lines_read = file.Record.LinesRead,
        rows_taken = file.Record.RowsTaken,
        rows_rejected = file.Record.RowsRejected,
        lines_not_data = file.Record.LinesNotData,
        revisions = file.Result.Revisions.Select(revision => new { row = revision.Row, replaces = revision.Replaces, variable = revision.Variable }),
        sessions = file.Sessions.Select(session => session.Id),
    });

    /// <summary>A file that is held.</summary>
    public static string Held(IntakeFile file) =>
        JsonSerializer.Serialize(new { original = file.Hash.ToString(), source = file.Source, reasons = file.HoldReasons.Select(reason => reason.Code).Distinct() });

    /// <summary>A file that a person left out.</summary>
    public static string LeftOut(IntakeFile file) => JsonSerializer.Serialize(new { original = file.Hash.ToString() });

    /// <summary>Bytes that came again.</summary>
    public static string Duplicate(string hash) => JsonSerializer.Serialize(new { original = hash });

    /// <summary>What the registry keeps beside the counts: what the lines that are no data were, remarks, and what was corrected.</summary>
    public static string Registry(FileResult result, NameMask mask) => JsonSerializer.Serialize(new
    {
        not_data = result.Counts.NotData,
        rejected_cells = result.RejectedCells,
        recordings = result.Recordings,
        remarks = result.Remarks.Select(remark => Masked(remark, mask)),
        revisions = result.Revisions.Select(revision => new { row = revision.Row, replaces = revision.Replaces, variable = revision.Variable, before = revision.Before, after = revision.After }),
    });

    /// <summary>A problem as it may be stored: an unknown name is not repeated, known ones stand as codes.</summary>
    public static Problem Stored(Problem problem, NameMask mask) => problem.Code == "alias-unknown"
        ? problem with { Found = "a name that nobody in the study has", Mend = "'swingstudy ingest' tells the name; give it to its player with 'swingstudy people add CODE --alias NAME'." }
        : Masked(problem, mask);

    private static Problem Masked(Problem problem, NameMask mask) => problem with { Found = mask.Of(problem.Found), Mend = mask.Of(problem.Mend) };
}
