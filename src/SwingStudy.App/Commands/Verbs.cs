using System.CommandLine;
using SwingStudy.App.Terminal;

namespace SwingStudy.App.Commands;

/// <summary>All verbs of <c>swingstudy</c>.</summary>
internal static class Verbs
{
    /// <summary>Runs a command line and returns its exit code.</summary>
    public static int Run(string[] arguments, TextWriter output, TextWriter error, TimeProvider time)
    {
        var runner = new CommandRunner(output, error, time);
        return runner.Invoke(Root(runner), arguments);
    }

    /// <summary>The tree of verbs.</summary>
    public static RootCommand Root(CommandRunner runner)
    {
        var root = new RootCommand("SwingStudy turns golf lessons into a structured intervention study whose every number can be traced.")
        {
            runner.Study,
            runner.AsJson,
            runner.Verbose,
            DemoCommand.Create(runner),
            NewCommand.Create(runner),
            ProtocolCommand.Create(runner),
            DictionaryCommand.Create(runner),
            SourceCommand.Create(runner),
            PeopleCommand.Create(runner),
            SessionCommand.Create(runner),
            IngestCommand.Create(runner),
            RunCommand.Create(runner),
            StatusCommand.Create(runner),
            DecideCommand.Create(runner),
            ReportCommand.Create(runner),
            QueryCommand.Create(runner),
            AuditCommand.Create(runner),
            ExportCommand.Create(runner),
            ReleaseCommand.Create(runner),
            CalcCommand.Create(runner),
        };
        return root;
    }
}
