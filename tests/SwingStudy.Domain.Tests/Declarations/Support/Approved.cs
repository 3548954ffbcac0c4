namespace SwingStudy.Domain.Tests.Declarations.Support;

/// <summary>Compares a text that people see with its approved file under TestData.</summary>
public static class Approved
{
    /// <summary>Fails with the place of the received text when it differs; copy that over the approved file when the change is meant.</summary>
    public static void Check(string name, string text)
    {
        var approved = Path.Combine(AppContext.BaseDirectory, "TestData", name.Replace(".", ".approved.", StringComparison.Ordinal));
        if (File.Exists(approved) && File.ReadAllText(approved) == text)
            return;
        var received = Path.Combine(AppContext.BaseDirectory, name.Replace(".", ".received.", StringComparison.Ordinal));
        File.WriteAllText(received, text);
        Assert.Fail($"{approved} differs from {received}.");
    }
}
