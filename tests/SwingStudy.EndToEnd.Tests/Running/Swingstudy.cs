using System.Diagnostics;
using System.Text.Json;

namespace SwingStudy.EndToEnd.Tests.Running;

/// <summary>Runs the real executable as a user does.</summary>
internal static class Swingstudy
{
    /// <summary>Path of the executable.</summary>
    public static string Executable { get; } = FindExecutable();

    /// <summary>Runs one command line to its end.</summary>
    public static Finished Run(params string[] arguments) => RunIn(Path.GetTempPath(), arguments);

    /// <summary>Runs one command line in <paramref name="folder"/>.</summary>
    public static Finished RunIn(string folder, params string[] arguments)
    {
        using var process = Start(folder, arguments);
        return Await(process);
    }

    /// <summary>Runs one command line in <paramref name="folder"/>, output going to a file, for a reader of that many columns.</summary>
    public static Finished RunFor(int columns, string folder, params string[] arguments)
    {
        using var process = Start(folder, [new("COLUMNS", columns.ToString(System.Globalization.CultureInfo.InvariantCulture))], arguments);
        return Await(process);
    }

    /// <summary>Runs one command line on a terminal of its own, at which somebody types; output and messages come back together.</summary>
    public static Finished RunOnTerminal(string folder, string typed, params string[] arguments)
    {
        // 'script' gives the program a pseudo-terminal; no argument of the tests needs quoting beyond this.
        var start = new ProcessStartInfo("script") { WorkingDirectory = folder, RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (var argument in new[] { "--quiet", "--return", "--echo", "never", "--command", string.Join(' ', new[] { Executable }.Concat(arguments).Select(word => $"'{word}'")), "/dev/null" })
            start.ArgumentList.Add(argument);
        using var process = Process.Start(start)!;
        process.StandardInput.Write(typed + "\n");
        process.StandardInput.Flush();
        return Await(process);
    }

    /// <summary>Waits until a process with redirected streams has ended.</summary>
    public static Finished Await(Process process)
    {
        var error = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return new Finished(process.ExitCode, output, error.Result);
    }

    /// <summary>Starts one command line and does not wait for it.</summary>
    public static Process Start(string folder, params string[] arguments) => Start(folder, [], arguments);

    private static Process Start(string folder, KeyValuePair<string, string>[] environment, string[] arguments)
    {
        var start = new ProcessStartInfo(Executable) { WorkingDirectory = folder, RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (var (name, value) in environment)
            start.Environment[name] = value;
        foreach (var argument in arguments)
            start.ArgumentList.Add(argument);
        return Process.Start(start) ?? throw new InvalidOperationException($"{Executable} did not start.");
    }

    private static string FindExecutable()
    {
        var binaries = new DirectoryInfo(AppContext.BaseDirectory);
        var configuration = binaries.Parent!.Name;
        var root = binaries;
        while (!File.Exists(Path.Combine(root.FullName, "SwingStudy.sln")))
            root = root.Parent ?? throw new DirectoryNotFoundException("SwingStudy.sln was not found above the test binaries.");
        return Path.Combine(root.FullName, "src", "SwingStudy.App", "bin", configuration, binaries.Name, "swingstudy");
    }
}

/// <summary>What a run left behind.</summary>
internal sealed record Finished(int ExitCode, string Output, string Error)
{
    /// <summary>The document printed with <c>--json</c>.</summary>
    public JsonElement Json => JsonDocument.Parse(Output).RootElement;

    /// <summary>Fails when a stack trace reached the terminal.</summary>
    public Finished WithoutStackTrace()
    {
        // A line of a trace: 'at', a qualified name, its parameters.
        Assert.DoesNotMatch(@"(?m)^\s+at [\w.<>`|+$\[\],]+\(", Output + Error);
        Assert.DoesNotContain("Unhandled exception", Output + Error, StringComparison.Ordinal);
        return this;
    }

    /// <summary>Fails with all that was printed when the exit code is another.</summary>
    public Finished Expect(int exitCode)
    {
        Assert.True(ExitCode == exitCode, $"Exit code {ExitCode} instead of {exitCode}.\n--- output\n{Output}\n--- error\n{Error}");
        return this;
    }
}
