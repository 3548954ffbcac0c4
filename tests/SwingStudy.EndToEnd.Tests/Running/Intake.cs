using System.Text.Json;

namespace SwingStudy.EndToEnd.Tests.Running;

/// <summary>What <c>ingest --json</c> told.</summary>
internal sealed class Intake
{
    private readonly JsonElement _document;

    private Intake(JsonElement document) => _document = document;

    /// <summary>Reads the document; fails when a balance is broken or a problem has no mend.</summary>
    public static Intake Of(Finished finished)
    {
        var intake = new Intake(finished.Json);
        foreach (var file in intake._document.GetProperty("files").EnumerateArray())
        {
            Assert.Equal(Number(file, "lines_read"), Number(file, "rows_taken") + Number(file, "rows_rejected") + file.GetProperty("not_data").EnumerateObject().Sum(kind => kind.Value.GetInt64()));
            Assert.All(file.GetProperty("problems").EnumerateArray(), problem => Assert.NotEmpty(problem.GetProperty("mend").GetString()!));
        }

        Assert.Equal(Number(intake._document, "lines_read"),
            Number(intake._document, "rows_taken") + Number(intake._document, "rows_rejected") + Number(intake._document, "lines_not_data"));
        return intake;
    }

    /// <summary>The result of one file.</summary>
    public JsonElement File(string name) => _document.GetProperty("files").EnumerateArray().Single(file => file.GetProperty("file").GetString() == name);

    /// <summary>Fails when a file did not become this; returns its result.</summary>
    public JsonElement Became(string name, string outcome)
    {
        var file = File(name);
        Assert.True(file.GetProperty("outcome").GetString() == outcome, $"{name} is not {outcome}: {file}");
        return file;
    }

    /// <summary>Fails when lines of a file became something else (the headings are one line that is not data); returns its result.</summary>
    public JsonElement Counted(string name, long taken, long rejected = 0, long notData = 1)
    {
        var file = Became(name, "taken");
        Assert.Equal((taken, rejected, notData),
            (Number(file, "rows_taken"), Number(file, "rows_rejected"), file.GetProperty("not_data").EnumerateObject().Sum(kind => kind.Value.GetInt64())));
        return file;
    }

    /// <summary>The problem of that code with which a file was held or not read.</summary>
    public JsonElement Problem(string name, string code) => Only(File(name), "problems", code);

    /// <summary>The remark of that code about a file.</summary>
    public JsonElement Remark(string name, string code) => Only(File(name), "remarks", code);

    private static JsonElement Only(JsonElement file, string list, string code)
    {
        var found = file.GetProperty(list).EnumerateArray().Where(problem => problem.GetProperty("code").GetString() == code).ToList();
        Assert.True(found.Count == 1, $"{found.Count} {list} '{code}' in {file}");
        return found[0];
    }

    private static long Number(JsonElement element, string name) => element.GetProperty(name).GetInt64();
}
