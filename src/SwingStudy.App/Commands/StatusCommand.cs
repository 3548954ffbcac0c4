using System.CommandLine;
using System.Globalization;
using Spectre.Console;
using SwingStudy.App.Studies;
using SwingStudy.App.Terminal;
using SwingStudy.Pipeline;
using SwingStudy.Pipeline.Running;
using SwingStudy.Reporting.Documents;
using SwingStudy.Storage.Registry;

namespace SwingStudy.App.Commands;

/// <summary><c>status</c>: what is held, unlinked, not up to date, and how far the study is.</summary>
internal static class StatusCommand
{
    public static Command Create(CommandRunner runner)
    {
        var command = new Command("status", "What is held, what is not linked, what is not up to date, and what the study holds.");
        runner.BindReading(command, (_, context, study) => Show(study, context.Time));
        return command;
    }

    private static CommandResult Show(OpenedStudy study, TimeProvider time)
    {
        var counts = study.Registry.IntakeCounts();
        var files = study.Registry.IntakeFiles();
        var held = files.Where(file => file.Status == IntakeStatus.Held).ToList();
        var review = LinkReview.Of(study.Tables);
        var waiting = new PipelineRunner(Stages.All, time, study.Tables).Waiting(study.Setup, study.Registry);
        var tables = study.Tables.Names().Select(name => study.Tables.Existing(name)!).ToList();
        var sessions = study.Registry.Sessions();
        var stops = SafetyRecords.Open(study);
        var consents = ConsentsDue.Of(study);
        return new CommandResult(
            held.Count + review.Waiting.Count + stops.Count > 0 ? ExitCode.NeedsPerson : ExitCode.Done,
            new
            {
                study = study.Setup.Declaration.Name,
                protocol = study.Setup.Protocol.Name,
                plan = new { locked = study.Setup.History.IsLocked, version = study.Setup.History.Current?.Number, drawn_players = study.Setup.Schedule.Players.Count, analyst_blind = study.Mask is not null },
                dictionary = study.Setup.Dictionary.Version.ToString(),
                participants = study.Registry.Participants().Count,
                sessions = sessions.Count,
                accounting = counts,
                files = files.Select(file => new
                {
                    sha256 = file.Hash.ToString(), path = file.InboxPath, file.Source, file.Status, file.Size, file.LinesRead, file.RowsTaken, file.RowsRejected,
                    file.LinesNotData, file.Encoding, file.Delimiter, decimal_mark = file.DecimalMark, problems = file.HoldReasons.Select(ProblemDocument.From),
                }),
                unlinked = review.Unlinked.Select(row => new { method = row.Key, captures = row.Value }),
                matches = review.Waiting.Select(match => new
                {
                    match.Capture, match.Method, match.Session, match.Candidate, match.Swing, residual_s = match.ResidualSeconds, match.Confidence,
                }),
                clocks = review.Clocks.Select(clock => new
                {
                    clock.Session, clock.Source, clock.Device, clock.Method, offset_s = clock.OffsetSeconds, clock.Confidence, clock.Matched, clock.Missed, clock.Extra,
                    rival_s = clock.RivalSeconds, rival_matched = clock.RivalMatched,
                }),
                stopped = SafetyRecords.Documents(stops),
                consents_due = consents.Select(ProblemDocument.From),
                waiting = waiting.Select(stage => new { stage = stage.Stage, units = stage.Units }),
                tables = tables.Select(table => new { name = table.Definition.Name, version = table.CurrentVersion, rows = table.Files().Sum(file => file.Rows), files = table.Files().Select(file => file.Path) }),
            },
            console =>
            {
                console.MarkupLineInterpolated($"[bold]{study.Setup.Declaration.Name}[/]: protocol {study.Setup.Protocol.Name}, {Counted.Of(study.Registry.Participants().Count, "player")}, {Counted.Of(sessions.Count, "session")}");
                console.MarkupLineInterpolated($"Plan: {Plan(study)}");
                console.MarkupLineInterpolated($"Files: {counts.Taken} taken, {counts.Held} held, {counts.Rejected} left out, {counts.Duplicates} came again");
                console.MarkupLineInterpolated($"Lines: {counts.LinesRead} read = {counts.RowsTaken} taken + {counts.RowsRejected} rejected + {counts.LinesNotData} not data");
                foreach (var file in held)
                {
                    console.MarkupLineInterpolated($"[bold]Held:[/] {file.InboxPath} ({file.Hash.Short})");
                    ProblemLines.Write(console, file.HoldReasons);
                }

                SafetyRecords.Write(console, stops);
                if (consents.Count > 0)
                    console.MarkupLine("[bold]Consents that are due:[/]");
                ProblemLines.Write(console, consents);
                foreach (var (method, captures) in review.Unlinked)
                    console.MarkupLineInterpolated($"In no swing: {Counted.Of(captures, "record")}, {LinkWords.Of(method)}{Mend(method)}");
                Clocks(console, review.Clocks);
                foreach (var match in review.Waiting)
                    console.MarkupLineInterpolated($"[bold]To decide:[/] {match.Text}");
                if (waiting.Count > 0)
                    console.MarkupLineInterpolated($"Not up to date: {string.Join(", ", waiting.Select(stage => $"{stage.Stage} ({Text(stage.Units)})"))}; 'swingstudy run' brings them there.");
                Listing.Write(console, ["table", "version", "rows", "files"], tables.Select(table => (IReadOnlyList<string>)
                    [table.Definition.Name, Text(table.CurrentVersion), Text(table.Files().Sum(file => file.Rows)), Text(table.Files().Count)]), "There are no tables yet: 'swingstudy ingest', then 'swingstudy run'.");
            });
    }

    /// <summary>Clocks that could not be told, each with its doubt; of the others what the devices missed or recorded falsely, summed over sessions.</summary>
    private static void Clocks(IAnsiConsole console, IReadOnlyList<ReviewedClock> clocks)
    {
        foreach (var clock in clocks.Where(clock => !clock.IsMade))
            console.MarkupLineInterpolated($"[bold]Clock:[/] {clock.Text}");
        var devices = clocks.Where(clock => clock.IsMade).GroupBy(clock => clock.Device).OrderBy(group => group.Key, StringComparer.Ordinal).ToList();
        if (devices.Count == 0)
            return;
        console.WriteLine("Devices that missed swings of a session, or recorded where there was none (each session with --json):");
        Listing.Write(console, ["device", "sessions", "swings missed", "records without a swing"], devices.Select(device => (IReadOnlyList<string>)
            [device.Key, Text(device.Count()), Text(device.Sum(clock => clock.Missed ?? 0)), Text(device.Sum(clock => clock.Extra ?? 0))]), "");
    }

    private static string Plan(OpenedStudy study)
    {
        if (study.Setup.History.Current is not { } locked)
            return "the protocol is not locked; 'swingstudy protocol lock' before the first swing with the cue";
        var drawn = study.Setup.Protocol.Randomization is null ? "nothing is drawn" : FormattableString.Invariant($"drawn for {Counted.Of(study.Setup.Schedule.Players.Count, "player")}");
        return FormattableString.Invariant($"version {locked.Number} locked on {locked.At:uuuu-MM-dd}, {drawn}{(study.Mask is null ? "" : ", the analyst is blind")}");
    }

    private static string Mend(string method) => method == "no-session" ? "; 'swingstudy session add' or 'session import' records one, then 'swingstudy run'" : "";

    private static string Text(long number) => number.ToString(CultureInfo.InvariantCulture);
}
