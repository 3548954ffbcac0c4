using System.CommandLine;
using NodaTime;
using NodaTime.Text;
using Spectre.Console;
using SwingStudy.App.Studies;
using SwingStudy.App.Terminal;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.People;
using SwingStudy.Domain.Problems;

namespace SwingStudy.App.Commands;

/// <summary><c>people consent</c>: a yes or a no of one signer, scope by scope.</summary>
internal static class ConsentCommand
{
    public static Command Create(CommandRunner runner)
    {
        var code = new Argument<string>("code") { Description = "Pseudonym, such as P01." };
        var scope = new Option<string[]>("--scope") { Description = "What for; may be repeated. Each is asked on its own.", Required = true, HelpName = string.Join("|", Word.All<ConsentScope>()) };
        scope.AcceptOnlyFromAmong([.. Word.All<ConsentScope>()]);
        var takenBack = new Option<bool>("--taken-back") { Description = "The answer is no, or an earlier yes is taken back." };
        var guardian = new Option<bool>("--by-guardian") { Description = "A guardian of a minor signed." };
        var assent = new Option<bool>("--assent") { Description = "The minor's own assent, needed beside the guardian's consent." };
        var version = new Option<string?>("--form") { Description = "Version of the form." };
        var language = new Option<string?>("--language") { Description = "Language of the form, such as en or pt-BR." };
        var date = new Option<string?>("--date") { Description = "The day it was signed (default: today).", HelpName = "YYYY-MM-DD" };
        var takenBy = new Option<string?>("--taken-by") { Description = "Who took it: a code or an office, best not the player's coach." };
        var note = new Option<string?>("--note") { Description = "Remark; no name." };
        var command = new Command("consent", $"Record a consent. {PeopleCommand.Caution}") { code, scope, takenBack, guardian, assent, version, language, date, takenBy, note };
        runner.BindWriting(command, (parsed, context, study) =>
        {
            if (!ParticipantCodes.Known(study, parsed.GetValue(code)!).Succeeded(out var participant, out var problems))
                return CommandResult.Failed(problems[0].Code == "participant-unknown" ? ExitCode.InvalidInput : ExitCode.WrongUsage, problems);
            if (parsed.GetValue(guardian) && parsed.GetValue(assent))
                return CommandResult.Failed(ExitCode.WrongUsage, "signer-unclear", "people consent", "--by-guardian and --assent together", "one signer a command", "Record each signature on its own.");
            if (!Day(context, study, parsed.GetValue(date)).Succeeded(out var signed, out problems))
                return CommandResult.Failed(ExitCode.WrongUsage, problems);
            var consent = new Consent(participant, default, !parsed.GetValue(takenBack),
                parsed.GetValue(guardian) ? ConsentSigner.Guardian : parsed.GetValue(assent) ? ConsentSigner.Assent : ConsentSigner.Participant, PeopleEntry.Now(context.Time))
            {
                Version = parsed.GetValue(version),
                Language = parsed.GetValue(language),
                SignedOn = signed,
                TakenBy = parsed.GetValue(takenBy),
                Note = parsed.GetValue(note),
            };
            return Record(context, study, consent, [.. Enum.GetValues<ConsentScope>().Where(known => parsed.GetValue(scope)!.Contains(Word.Of(known)))]);
        });
        return command;
    }

    private static CommandResult Record(CommandContext context, OpenedStudy study, Consent consent, IReadOnlyList<ConsentScope> scopes)
    {
        var eligibility = study.Setup.Protocol.Eligibility;
        var facts = study.Registry.Facts(consent.Participant);
        if (consent.Given && scopes.Contains(ConsentScope.Research) && EligibilityCheck.Check(facts, eligibility) is { Count: > 0 } against)
            return CommandResult.Failed(ExitCode.Refused, against);
        PeopleEntry.Record(study, context.Actor, consent, scopes);
        var standing = new ConsentStanding(eligibility);
        var all = study.Registry.Consents(consent.Participant);
        var lacking = scopes.Select(scope => standing.Lacking(facts, all, scope)).OfType<Problem>().ToList();
        var signer = Word.Of(consent.Signer);
        return CommandResult.Done(
            new
            {
                participant = consent.Participant.ToString(), scopes = scopes.Select(Word.Of), consent.Given, signer,
                in_force = standing.InForce(facts, all).Select(Word.Of), lacking = lacking.Select(ProblemDocument.From),
            },
            console =>
            {
                console.MarkupLineInterpolated($"{consent.Participant.ToString()}: {string.Join(", ", scopes.Select(Word.Of))} {(consent.Given ? "consented" : "refused or taken back")} ({signer}).");
                ProblemLines.Write(console, lacking);
                if (!consent.Given && scopes.Contains(ConsentScope.Research))
                    console.MarkupLineInterpolated($"What was taken before stays and counts; 'swingstudy people withdraw {consent.Participant.ToString()} --earlier leave-out' or 'people erase' decides about it.");
            });
    }

    private static Outcome<LocalDate> Day(CommandContext context, OpenedStudy study, string? text)
    {
        if (text is null)
            return PeopleEntry.Now(context.Time).InZone(DateTimeZoneProviders.Tzdb[study.Setup.Declaration.Zone]).Date;
        return LocalDatePattern.Iso.Parse(text).TryGetValue(default, out var day)
            ? day
            : new Problem("date-unreadable", new Place("--date"), $"'{text}'", "a date as YYYY-MM-DD", "For instance: --date 2026-09-07.");
    }
}
