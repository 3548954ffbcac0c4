using System.CommandLine;
using Spectre.Console;
using SwingStudy.App.Studies;
using SwingStudy.App.Terminal;
using SwingStudy.Reporting.Documents;

namespace SwingStudy.App.Commands;

/// <summary><c>report</c>: one static page with findings and figures.</summary>
internal static class ReportCommand
{
    public static Command Create(CommandRunner runner)
    {
        var player = new Option<string?>("--player") { Description = "The report of one player (default: the study's).", HelpName = "P01" };
        var command = new Command("report", "Write the report of the study, or of one player, as one static HTML file. A blind analyst gets codes in place of conditions, and no direction.") { player };
        runner.BindReading(command, (parsed, context, study) =>
        {
            var wanted = parsed.GetValue(player);
            // A page of one player shows sessions in their order, which tells the phases: the blind get the study's page alone.
            if (study.Mask is not null && wanted is not null)
                return ProtocolUnblindCommand.Blind("report");
            var report = StudyReports.Gather(study);
            if (study.Mask is not null)
                return Blind(context, StudyReports.WriteBlind(study, report));
            var known = ReportWriter.ParticipantsOf(report);
            if (wanted is not null && !known.Contains(wanted))
            {
                return CommandResult.Failed(ExitCode.InvalidInput, "participant-unknown", wanted, "no finding and no swing of such a player", "a player with results",
                    known.Count > 0 ? $"Players with results: {string.Join(", ", known)}." : "Run 'swingstudy ingest' and 'swingstudy run' first.");
            }

            var file = StudyReports.Write(study, report, wanted);
            context.Log.Information("Report written for {Scope}", wanted ?? "study");
            return CommandResult.Done(new { file, player = wanted, findings = report.Tables.Findings.Count }, console => console.MarkupLineInterpolated($"Report: {file}"));
        });
        return command;
    }

    private static CommandResult Blind(CommandContext context, string file)
    {
        context.Log.Information("Blind report written");
        return CommandResult.Done(new { file, blind = true }, console => console.MarkupLineInterpolated(
            $"Blind report, with codes in place of conditions: {file}. 'swingstudy protocol unblind' goes on record and gives the whole one."));
    }
}
