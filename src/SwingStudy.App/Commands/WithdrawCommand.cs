using System.CommandLine;
using System.Text.Json;
using Spectre.Console;
using SwingStudy.App.Studies;
using SwingStudy.App.Terminal;
using SwingStudy.Storage.Registry;

namespace SwingStudy.App.Commands;

/// <summary><c>people withdraw</c>: from now on nothing more of a player is taken in.</summary>
internal static class WithdrawCommand
{
    private const string Keep = "keep";
    private const string LeaveOut = "leave-out";

    public static Command Create(CommandRunner runner)
    {
        var code = new Argument<string>("code") { Description = "Pseudonym, such as P01." };
        var earlier = new Option<string>("--earlier")
        {
            Description = "What the player chose for the data taken so far: keep (they count on) or leave-out (they stay stored and do not count).",
            DefaultValueFactory = _ => Keep,
        };
        earlier.AcceptOnlyFromAmong(Keep, LeaveOut);
        var note = new Option<string?>("--note") { Description = "Remark; no name. A player need not give a reason." };
        var command = new Command("withdraw", "A player leaves: nothing more is taken in. To remove what was taken, see 'people erase'.") { code, earlier, note };
        runner.BindWriting(command, (parsed, context, study) =>
        {
            if (!ParticipantCodes.Known(study, parsed.GetValue(code)!).Succeeded(out var participant, out var problems))
                return CommandResult.Failed(problems[0].Code == "participant-unknown" ? ExitCode.InvalidInput : ExitCode.WrongUsage, problems);
            var keeps = parsed.GetValue(earlier) == Keep;
            var at = PeopleEntry.Now(context.Time);
            var person = study.Registry.Participant(participant)!;
            study.Registry.Act(context.Actor, "people.withdraw", act =>
            {
                act.Save(person with { Status = Participant.Withdrawn });
                act.Save(new Withdrawal(participant, keeps, at, context.Actor, parsed.GetValue(note)));
                act.Add(new Decision(0, Decision.Withdraw, JsonSerializer.Serialize(new { participant = participant.ToString(), earlier = keeps ? Keep : LeaveOut }),
                    parsed.GetValue(note) ?? "", context.Actor, at));
                return JsonSerializer.Serialize(new { participant = participant.ToString(), earlier = keeps ? Keep : LeaveOut });
            });
            var releases = Directory.Exists(study.Setup.Folder.Releases) ? Directory.GetDirectories(study.Setup.Folder.Releases).Select(Path.GetFileName).Order(StringComparer.Ordinal).ToList() : [];
            return CommandResult.Done(
                new { participant = participant.ToString(), status = Participant.Withdrawn, earlier = parsed.GetValue(earlier), releases_that_stay = releases },
                console =>
                {
                    console.MarkupLineInterpolated($"{participant.ToString()} has withdrawn. Files with rows of {participant.ToString()} are held from now on.");
                    console.MarkupLineInterpolated($"Earlier data {(keeps ? "count on" : "no longer count: 'swingstudy run' brings the results up to date")}. Said again, '--earlier' changes it.");
                    if (releases.Count > 0)
                        console.MarkupLineInterpolated($"Finished releases stay as they are: {string.Join(", ", releases)}.");
                });
        });
        return command;
    }
}
