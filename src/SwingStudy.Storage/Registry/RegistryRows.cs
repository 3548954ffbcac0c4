using System.Text.Json;
using NodaTime.Text;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.People;
using SwingStudy.Domain.Problems;
using SwingStudy.Storage.Files;

namespace SwingStudy.Storage.Registry;

/// <summary>Rows of the registry as records, and back.</summary>
internal static class RegistryRows
{
    internal const string Keep = "keep";
    internal const string LeaveOut = "leave-out";

    internal static Participant Participant(Row row) => new(new ParticipantId(row.Text("code")), row.Text("status"), row.At("added_at"));

    internal static Consent Consent(Row row) => new(new ParticipantId(row.Text("participant")), Meaning<ConsentScope>(row.Text("scope")), row.Whole("given") != 0,
        Meaning<ConsentSigner>(row.Text("signer")), row.At("at"))
    {
        Version = row.OptionalText("version"),
        Language = row.OptionalText("language"),
        SignedOn = row.OptionalText("signed_on") is { } day ? LocalDatePattern.Iso.Parse(day).GetValueOrThrow() : null,
        TakenBy = row.OptionalText("taken_by"),
        Note = row.OptionalText("note"),
    };

    internal static Withdrawal Withdrawal(Row row) => new(new ParticipantId(row.Text("participant")), row.Text("earlier") == Keep, row.At("at"), row.Text("actor"), row.OptionalText("note"));

    internal static SessionEntry Entry(Row row) => new(row.Whole("id"), row.Text("session"), new ParticipantId(row.Text("participant")), row.Text("kind"), row.At("at"),
        row.Text("actor"), row.Text("document"));

    internal static SessionStop Stop(Row row) => new(row.Text("session"), new ParticipantId(row.Text("participant")), row.Text("evidence"), row.Text("rule"), row.Text("detail"), row.At("at"))
    {
        Id = row.Whole("id"),
        ResumedAt = row.OptionalText("resumed_at") is null ? null : row.At("resumed_at"),
        ResumedBy = row.OptionalText("resumed_by"),
        ResumedReason = row.OptionalText("resumed_reason"),
    };

    internal static Erasure Erasure(Row row) => new(row.Text("id"), row.At("started_at"), row.OptionalText("finished_at") is null ? null : row.At("finished_at"), row.Text("document"));

    internal static ErasedOriginal ErasedOriginal(Row row) => new(new Sha256(row.Text("sha256")), Hash(row.OptionalText("stored")), row.Text("erasure"));

    internal static Decision Decision(Row row) => new(row.Whole("id"), row.Text("kind"), row.Text("subject"), row.Text("reason"), row.Text("actor"), row.At("at"));

    internal static IntakeCounts Counts(Row row) => new(row.Whole("taken"), row.Whole("held"), row.Whole("rejected"), row.Whole("duplicates"),
        row.Whole("lines_read"), row.Whole("rows_taken"), row.Whole("rows_rejected"), row.Whole("lines_not_data"));

    internal static LedgerEntry Ledger(Row row) => new(row.Whole("number"), row.At("at"), row.Text("actor"), row.Text("act"), row.Text("details"),
        row.Text("previous"), row.Text("hash"));

    internal static StageRun StageRun(Row row) => new(row.Text("run_id"), row.Text("stage"), row.Text("unit"), new Sha256(row.Text("input_hash")),
        JsonSerializer.Deserialize<List<string>>(row.Text("outputs"))!, row.Text("code_version"), row.At("started_at"), row.At("finished_at"));

    internal static IntakeFile IntakeFile(Row row) => new()
    {
        Hash = new Sha256(row.Text("sha256")),
        Source = row.OptionalText("source"),
        InboxPath = row.Text("inbox_path"),
        Size = row.Whole("size"),
        Status = Enum.Parse<IntakeStatus>(row.Text("status"), ignoreCase: true),
        LinesRead = row.Whole("lines_read"),
        RowsTaken = row.Whole("rows_taken"),
        RowsRejected = row.Whole("rows_rejected"),
        LinesNotData = row.Whole("lines_not_data"),
        MappingHash = Hash(row.OptionalText("mapping_hash")),
        Encoding = row.OptionalText("encoding"),
        Delimiter = row.OptionalText("delimiter"),
        DecimalMark = row.OptionalText("decimal_mark"),
        Preamble = row.OptionalText("preamble"),
        HoldReasons = JsonSerializer.Deserialize<List<Problem>>(row.Text("hold_reasons"))!,
        Details = row.OptionalText("details"),
        At = row.At("taken_at"),
    };

    internal static SessionRecord Session(Row row) => new()
    {
        Id = row.Text("id"),
        Participant = new ParticipantId(row.Text("participant")),
        StartedAt = row.At("started_at"),
        StartedLocal = LocalDateTimePattern.ExtendedIso.Parse(row.Text("started_local")).GetValueOrThrow(),
        Phase = row.OptionalText("phase"),
        Site = row.OptionalText("site"),
        Club = row.OptionalText("club"),
        Ball = row.OptionalText("ball"),
        Surface = row.OptionalText("surface"),
        Cue = row.OptionalText("cue"),
        PlannedSwings = (int?)row.OptionalWhole("planned_swings"),
        Variables = row.Text("variables"),
        Note = row.OptionalText("note"),
        Original = Hash(row.OptionalText("original_sha256")),
        OriginalRow = (int?)row.OptionalWhole("original_row"),
        Revision = (int)row.Whole("revision"),
    };

    internal static object Write(StageRun run) => new
    {
        run.RunId,
        run.Stage,
        run.Unit,
        InputHash = run.InputHash.ToString(),
        Outputs = JsonSerializer.Serialize(run.Outputs),
        run.CodeVersion,
        StartedAt = Row.Write(run.StartedAt),
        FinishedAt = Row.Write(run.FinishedAt),
    };

    internal static object Write(IntakeFile file) => new
    {
        Hash = file.Hash.ToString(),
        file.Source,
        file.InboxPath,
        file.Size,
        Status = Word(file.Status),
        file.LinesRead,
        file.RowsTaken,
        file.RowsRejected,
        file.LinesNotData,
        MappingHash = file.MappingHash?.ToString(),
        file.Encoding,
        file.Delimiter,
        file.DecimalMark,
        file.Preamble,
        HoldReasons = JsonSerializer.Serialize(file.HoldReasons),
        file.Details,
        At = Row.Write(file.At),
    };

    internal static object Write(SessionRecord session) => new
    {
        session.Id,
        Participant = session.Participant.ToString(),
        StartedAt = Row.Write(session.StartedAt),
        StartedLocal = LocalDateTimePattern.ExtendedIso.Format(session.StartedLocal),
        session.Phase,
        session.Site,
        session.Club,
        session.Ball,
        session.Surface,
        session.Cue,
        session.PlannedSwings,
        session.Variables,
        session.Note,
        Original = session.Original?.ToString(),
        session.OriginalRow,
        session.Revision,
    };

    /// <summary>A status as the database holds it.</summary>
    internal static string Word(IntakeStatus status) => status switch
    {
        IntakeStatus.Taken => "taken",
        IntakeStatus.Held => "held",
        IntakeStatus.Rejected => "rejected",
        _ => throw new ArgumentOutOfRangeException(nameof(status), status, "Unknown status."),
    };

    internal static object Write(Consent consent) => new
    {
        Participant = consent.Participant.ToString(),
        Scope = Domain.Identifiers.Word.Of(consent.Scope),
        consent.Given,
        Signer = Domain.Identifiers.Word.Of(consent.Signer),
        At = Row.Write(consent.At),
        consent.Version,
        consent.Language,
        SignedOn = consent.SignedOn is { } day ? LocalDatePattern.Iso.Format(day) : null,
        consent.TakenBy,
        consent.Note,
    };

    private static T Meaning<T>(string word)
        where T : struct, Enum => Enum.GetValues<T>().First(value => Domain.Identifiers.Word.Of(value) == word);

    private static Sha256? Hash(string? hex) => hex is null ? null : new Sha256(hex);
}
