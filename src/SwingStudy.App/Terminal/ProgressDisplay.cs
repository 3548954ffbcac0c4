using System.Globalization;
using Spectre.Console;

namespace SwingStudy.App.Terminal;

/// <summary>Progress of long work on standard error: a bar on a terminal, a plain line every two seconds elsewhere.</summary>
internal static class ProgressDisplay
{
    private static readonly TimeSpan LineEvery = TimeSpan.FromSeconds(2);

    /// <summary>Does <paramref name="work"/>, which tells the share done and what it is at.</summary>
    public static T Show<T>(CommandContext context, string title, Func<Action<double, string>, T> work) =>
        context.IsInteractive ? Bar(context, title, work) : Lines(context, title, work);

    private static T Bar<T>(CommandContext context, string title, Func<Action<double, string>, T> work) => context.Messages.Progress()
        .AutoClear(true)
        .Columns(new TaskDescriptionColumn { Alignment = Justify.Left }, new ProgressBarColumn(), new PercentageColumn(), new RemainingTimeColumn())
        .Start(progress =>
        {
            var task = progress.AddTask(Markup.Escape(title), maxValue: 1);
            return work((share, at) =>
            {
                task.Value = share;
                task.Description = Markup.Escape(at.Length == 0 ? title : $"{title} {at}");
            });
        });

    private static T Lines<T>(CommandContext context, string title, Func<Action<double, string>, T> work)
    {
        var last = context.Time.GetTimestamp();
        return work((share, at) =>
        {
            if (context.Time.GetElapsedTime(last) < LineEvery)
                return;
            last = context.Time.GetTimestamp();
            context.Messages.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{title} {share * 100:0} % {at}"));
        });
    }
}
