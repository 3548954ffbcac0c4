using System.CommandLine;
using System.Globalization;
using System.Text;
using System.Text.Json;
using NodaTime;
using NodaTime.Text;
using Spectre.Console;
using SwingStudy.App.Studies;
using SwingStudy.App.Terminal;
using SwingStudy.Domain.Protocols;

namespace SwingStudy.App.Commands;

/// <summary><c>protocol schedule</c>: draws what the protocol leaves to chance, before data, and gives each player a calendar.</summary>
internal static class ProtocolScheduleCommand
{
    public static Command Create(CommandRunner runner)
    {
        var show = new Option<bool>("--show") { Description = "Show what was drawn; nothing is drawn." };
        var redraw = new Option<bool>("--redraw") { Description = "Draw again what was drawn under an earlier version of the protocol." };
        var players = new Option<string[]>("--player") { Description = "These players alone; may be repeated.", HelpName = "P01" };
        var start = new Option<string?>("--start") { Description = "Day of the first session; without it sessions are numbered and have no days.", HelpName = "YYYY-MM-DD" };
        var every = new Option<int>("--every") { Description = "Days from one session to the next.", HelpName = "DAYS", DefaultValueFactory = _ => 7 };
        var ics = new Option<string?>("--ics") { Description = "Write the calendar for calendar programs (RFC 5545).", HelpName = "FILE" };
        var csv = new Option<string?>("--csv") { Description = "Write the calendar as CSV.", HelpName = "FILE" };
        var command = new Command("schedule", "Draw who starts when, or in which order conditions come, before data; print each player's calendar.") { show, redraw, players, start, every, ics, csv };
        runner.BindWriting(command, (parsed, context, study) =>
        {
            var wish = new Wish(parsed.GetValue(players) ?? [], Day(parsed.GetValue(start)), parsed.GetValue(every), parsed.GetValue(ics), parsed.GetValue(csv));
            if (Misuse(parsed.GetValue(start), wish) is { } misuse)
                return misuse;
            return parsed.GetValue(show) ? Show(context, study, wish) : Draw(context, study, wish, parsed.GetValue(redraw));
        });
        return command;
    }

    private static LocalDate? Day(string? text) => text is not null && LocalDatePattern.Iso.Parse(text).TryGetValue(default, out var day) ? day : null;

    private static CommandResult? Misuse(string? start, Wish wish)
    {
        if (start is not null && wish.Start is null)
            return CommandResult.Failed(ExitCode.WrongUsage, "start-unreadable", "--start", $"'{start}'", "a day", "For instance: --start 2026-09-07.");
        if (wish.EveryDays < 1)
            return CommandResult.Failed(ExitCode.WrongUsage, "every-unreadable", "--every", $"{wish.EveryDays}", "1 day or more", "For instance: --every 7.");
        return wish.ICalendar is not null && wish.Start is null
            ? CommandResult.Failed(ExitCode.WrongUsage, "start-missing", "--ics", "a calendar without days", "the day of the first session", "Add --start YYYY-MM-DD.")
            : null;
    }

    private static CommandResult Draw(CommandContext context, OpenedStudy study, Wish wish, bool again)
    {
        var protocol = study.Setup.Protocol;
        if (!study.Setup.History.IsLocked)
            return ProtocolLockCommand.NotLocked(study.Setup.Folder.ProtocolFile);
        if (protocol.Randomization is null || DrawPlan.Of(protocol) is not { } plan)
        {
            return CommandResult.Failed(ExitCode.InvalidInput, "nothing-to-draw", study.Setup.Folder.ProtocolFile, "the protocol leaves nothing to chance", "'randomization:'",
                "Amend the protocol, or run the study as 'not randomized'.");
        }

        var now = Instant.FromDateTimeOffset(context.Time.GetUtcNow());
        var due = PlayersToDraw.Of(study, plan, wish.Players, again, now);
        if (!due.Succeeded(out var players))
            return CommandResult.Failed(due.Problems.Any(problem => PlayersToDraw.Refused.Contains(problem.Code)) ? ExitCode.Refused : ExitCode.InvalidInput, due.Problems);
        var draw = PlayersToDraw.Store(study, plan, players, context);
        context.Log.Information("Draw {Draw}: {Kind} among {Assignments} assignments for {Players} players", draw.Number, draw.Kind, draw.Assignments, players.Count);
        return Calendar(study, study.Setup.Schedule, wish, draw.Players.Select(player => player.Participant));
    }

    private static CommandResult Show(CommandContext context, OpenedStudy study, Wish wish)
    {
        var schedule = study.Setup.Schedule;
        if (!schedule.IsDrawn)
        {
            return CommandResult.Failed(ExitCode.InvalidInput, "nothing-drawn", "protocol schedule", "nothing was drawn yet", "a draw", "'swingstudy protocol schedule' draws.");
        }

        if (study.Mask is not null)
        {
            // Whoever runs sessions has to see phases; that somebody looked stands in the ledger, so that blindness can be judged later.
            study.Registry.Act(context.Actor, "protocol.schedule-shown", _ => JsonSerializer.Serialize(new { draws = schedule.Draws.Count }));
            context.Messages.WriteLine("The analyst of this study is blind: that the schedule was shown stands in the ledger.");
        }

        return Calendar(study, schedule, wish, schedule.Players.Select(player => player.Participant).Where(code => wish.Players.Count == 0 || wish.Players.Contains(code)));
    }

    private static CommandResult Calendar(OpenedStudy study, Schedule schedule, Wish wish, IEnumerable<string> participants)
    {
        var shown = participants.Select(code => (Draw: schedule.DrawOf(code)!, Player: schedule.Of(code)!)).ToList();
        var calendars = shown.Select(pair => SessionCalendar.Of(study.Setup.Protocol, pair.Player, wish.Start, wish.EveryDays)).ToList();
        if (wish.ICalendar is { } ics)
            Write(ics, CalendarFile.ICalendar(study.Setup.Declaration.Name, shown.Zip(calendars, (pair, sessions) => (pair.Draw, sessions))));
        if (wish.Csv is { } csv)
            Write(csv, CalendarFile.Csv(calendars.SelectMany(sessions => sessions)));
        return CommandResult.Done(
            new
            {
                draws = shown.Select(pair => pair.Draw).Distinct().Select(Document),
                players = shown.Zip(calendars, (pair, sessions) => new
                {
                    pair.Player.Participant, draw = pair.Draw.Number, pair.Player.Assignment, pair.Player.Tier, pair.Player.Start, admissible = pair.Player.Set,
                    sessions = sessions.Select(session => new { session.Number, day = session.Day is { } day ? LocalDatePattern.Iso.Format(day) : null, session.Phase, session.Cue, minimum_swings = session.Swings }),
                }),
                ics = wish.ICalendar, csv = wish.Csv,
            },
            console =>
            {
                foreach (var draw in shown.Select(pair => pair.Draw).Distinct())
                    console.MarkupLineInterpolated($"Draw {draw.Number} ({draw.Kind}, seed {draw.Seed}) of {draw.At.ToString("uuuu-MM-dd", CultureInfo.InvariantCulture)}: {Ways(draw)}");
                foreach (var sessions in calendars)
                    Write(console, sessions);
                foreach (var file in new[] { wish.ICalendar, wish.Csv }.OfType<string>())
                    console.MarkupLineInterpolated($"Written: {file}");
            });
    }

    private static object Document(Draw draw) => new
    {
        draw.Number, draw.ProtocolVersion, draw.Kind, seed = draw.Seed.ToString(CultureInfo.InvariantCulture), draw.IsJoint, draw.OrderDrawn, draw.Windows, draw.Assignments, draw.SmallestPossibleP,
        at = draw.At.ToString(), draw.Actor,
    };

    private static string Ways(Draw draw) => string.Create(CultureInfo.InvariantCulture,
        $"one of {draw.Assignments:0} assignments{(draw.IsJoint ? " of all players together" : " for each player")}, so that no p can be below {draw.SmallestPossibleP:0.####}.");

    private static void Write(IAnsiConsole console, IReadOnlyList<CalendarSession> sessions)
    {
        Listing.Write(console, ["player", "session", "day", "phase", "cue", "swings"], sessions.Select(session => (IReadOnlyList<string>)
        [
            session.Participant, session.Number.ToString(CultureInfo.InvariantCulture), session.Day is { } day ? LocalDatePattern.Iso.Format(day) : "", session.Phase, session.Cue ?? "",
            session.Swings?.ToString(CultureInfo.InvariantCulture) ?? "",
        ]), "No sessions.");
    }

    private static void Write(string file, string text)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(Path.GetFullPath(file))!);
        File.WriteAllText(file, text, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
    }

    /// <summary>What was asked for.</summary>
    private sealed record Wish(IReadOnlyList<string> Players, LocalDate? Start, int EveryDays, string? ICalendar, string? Csv);
}
